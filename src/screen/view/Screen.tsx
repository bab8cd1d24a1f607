import { Box, Text } from "ink";
import { comparedWith } from "../bench.ts";
import { surveyForm } from "../lateSurvey.ts";
import { cutSayer, sayer } from "../lengths.ts";
import type { Model } from "../model.ts";
import { hasRoomForForm } from "../room.ts";
import { viewOf } from "../views/views.ts";
import { AimPage } from "./AimPage.tsx";
import { AimsPage } from "./AimsPage.tsx";
import { Footer, Words } from "./Bottom.tsx";
import { CheckLine } from "./CheckLine.tsx";
import type { Typed } from "./Field.tsx";
import { PartsPage, StartingPage } from "./FrontEndPages.tsx";
import { GaugesPage } from "./GaugesPage.tsx";
import { carHead } from "./head.ts";
import { type Layout, layoutOf } from "./layout.ts";
import { MatchedPage } from "./MatchedPage.tsx";
import { isEmptied, NotTogether, waysOut } from "./NotTogether.tsx";
import { Numbers } from "./Numbers.tsx";
import { HelpPage, OpenPage, TooSmall } from "./Pages.tsx";
import { Tabs } from "./Tabs.tsx";
import { TapePage } from "./TapePage.tsx";
import { tones } from "./tone.ts";
import { UprightPage } from "./UprightPage.tsx";
import { fitting, wrapped } from "./wrap.ts";

/** Said beside the numbers at all times, since they can hurt someone. */
export const caution = "Geometry only, not strength. Check lock to lock through full travel on stands.";

/** Everything there is to see, drawn from the model alone. */
export function Screen({ model: whole, onTyped }: { readonly model: Model; readonly onTyped: Typed }) {
  const layout = layoutOf(whole);
  if (layout === null && !hasRoomForForm(whole)) {
    return (
      <Box flexDirection="column" width={whole.columns} height={whole.rows}>
        <TooSmall model={whole} />
        {whole.focus.on === "question" ? <Footer model={whole} /> : null}
      </Box>
    );
  }
  // Of a very wide window only so much is used: nothing is wrapped for more.
  const model: Model = { ...whole, columns: layout?.columns ?? whole.columns };
  const { focus } = model;
  const form = surveyForm();
  const page = [
    "help",
    "open",
    "parts",
    "starting",
    "tape",
    "survey",
    "points",
    "gauges",
    "matched",
    "upright",
    "aims",
    "aim",
  ].includes(focus.on);
  return (
    <Box flexDirection="column" width={model.columns} height={model.rows}>
      <Title model={model} columns={model.columns} />
      {focus.on === "help" ? <HelpPage model={model} top={focus.top} rows={model.rows - 2} /> : null}
      {focus.on === "open" ? (
        <OpenPage choices={focus.choices} cursor={focus.cursor} columns={model.columns} rows={model.rows - 2} />
      ) : null}
      {focus.on === "parts" ? <PartsPage model={model} cursor={focus.cursor} rows={model.rows - 2} /> : null}
      {focus.on === "tape" ? <TapePage model={model} focus={focus} rows={model.rows - 2} onTyped={onTyped} /> : null}
      {focus.on === "survey" && form !== null ? (
        <form.SurveyPage model={model} focus={focus} rows={model.rows - 2} onTyped={onTyped} />
      ) : null}
      {focus.on === "points" && form !== null ? (
        <form.PointsPage model={model} top={focus.top} rows={model.rows - 2} />
      ) : null}
      {focus.on === "gauges" ? (
        <GaugesPage model={model} focus={focus} rows={model.rows - 2} onTyped={onTyped} />
      ) : null}
      {focus.on === "matched" ? <MatchedPage model={model} top={focus.top} rows={model.rows - 2} /> : null}
      {focus.on === "upright" ? (
        <UprightPage model={model} focus={focus} rows={model.rows - 2} onTyped={onTyped} />
      ) : null}
      {focus.on === "aims" ? <AimsPage model={model} focus={focus} rows={model.rows - 2} /> : null}
      {focus.on === "aim" ? <AimPage model={model} focus={focus} rows={model.rows - 2} onTyped={onTyped} /> : null}
      {focus.on === "starting" ? <StartingPage model={model} cursor={focus.cursor} rows={model.rows - 2} /> : null}
      {page || layout === null ? null : <Bench model={model} layout={layout} onTyped={onTyped} />}
      <Footer model={model} />
    </Box>
  );
}

function Title({ model, columns }: { readonly model: Model; readonly columns: number }) {
  const head = surveyForm()?.sheetHead(model) ?? carHead(model);
  const whole = ` ${head.title}`;
  const rights = head.rights.map((words) => `${words} `);
  const right = rights.find((words) => whole.length + 1 + words.length <= columns) ?? rights.at(-1) ?? "";
  const title = fitting([whole], columns - right.length - 1);
  return (
    <Text bold wrap="truncate">
      {title.padEnd(columns - right.length) + right}
    </Text>
  );
}

function Bench({
  model,
  layout,
  onTyped,
}: {
  readonly model: Model;
  readonly layout: Layout;
  readonly onTyped: Typed;
}) {
  const { study } = model.bench;
  const { Body } = viewOf(model.view);
  return (
    <>
      {layout.banners.map(({ text, tone }) => (
        <Text key={text} {...tones[tone]} wrap="truncate">
          {text}
        </Text>
      ))}
      {"refused" in study ? (
        <Refusal words={study.refused} layout={layout} cure={waysOut(model).join(" ")} />
      ) : (
        <Numbers
          study={study}
          before={comparedWith(model)}
          pinned={model.pin !== null}
          length={sayer(model.display)}
          cut={cutSayer(model.display)}
          layout={layout}
        />
      )}
      {"refused" in study ? null : <CheckLine model={model} columns={layout.columns} />}
      <Tabs model={model} columns={layout.columns} />
      <Box flexDirection="column" height={layout.room.rows}>
        {isEmptied(model) ? (
          <NotTogether model={model} room={layout.room} />
        ) : (
          <Body model={model} room={layout.room} />
        )}
      </Box>
      <Words model={model} rows={layout.wordRows} onTyped={onTyped} />
      <Text wrap="truncate">{` ${caution}`}</Text>
    </>
  );
}

/** In the place of the five numbers: why there are none. */
function Refusal({ words, layout, cure }: { readonly words: string; readonly layout: Layout; readonly cure: string }) {
  return (
    <Box flexDirection="column" height={layout.numberRows + 2} paddingLeft={2}>
      <Text {...tones.bad}>{["DOES NOT GO TOGETHER", ...wrapped(words, layout.columns - 4)].join("\n")}</Text>
      <Text>{wrapped(cure, layout.columns - 4).join("\n")}</Text>
    </Box>
  );
}
