import { Box, Text } from "ink";

/** A screen of about the weight of the program's own: a list, a panel of figures, both moving with the count. */
export function View({
  count,
  columns,
  rows,
}: {
  readonly count: number;
  readonly columns: number;
  readonly rows: number;
}) {
  const lines = Array.from({ length: rows - 4 }, (_, row) => row);
  return (
    <Box flexDirection="column" width={columns} height={rows - 1}>
      <Text bold>count {count}</Text>
      <Box borderStyle="round" flexGrow={1}>
        <Box flexDirection="column" width={28}>
          {lines.map((row) => (
            <Text key={row} inverse={row === count % lines.length}>
              {`dimension ${row}`.padEnd(16)}
              {(14 + row / 8).toFixed(3)} in
            </Text>
          ))}
        </Box>
        <Box flexDirection="column" flexGrow={1}>
          {lines.map((row) => (
            <Text key={row}>
              figure {row} <Text color="green">{Math.sin(row + count / 10).toFixed(3)}°</Text>{" "}
              <Text color="yellow">{Math.cos(row + count / 10).toFixed(3)}°</Text>
            </Text>
          ))}
        </Box>
      </Box>
    </Box>
  );
}
