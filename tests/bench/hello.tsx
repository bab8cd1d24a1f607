import { Box, render, Text } from "ink";

/** The least an Ink program can be: what the real first screen's start-up is measured against. */
const app = render(
  <Box borderStyle="single" paddingX={1}>
    <Text>hello</Text>
  </Box>,
);
setTimeout(() => app.unmount(), 300);
