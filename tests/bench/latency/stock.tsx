import { render, useInput, useStdout } from "ink";
import { useState } from "react";
import { View } from "./view.tsx";

/** The screen on Ink as it comes, at 60 frames a second. */
function App() {
  const [count, setCount] = useState(0);
  const { stdout } = useStdout();
  useInput((input) => {
    if (input === "q") process.exit(0);
    setCount((before) => before + 1);
  });
  return <View count={count} columns={stdout.columns} rows={stdout.rows} />;
}

render(<App />, { maxFps: 60 });
