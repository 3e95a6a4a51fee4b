// The program `waywright`: the words of the command line and the terminal around it, handed to `run`.
import { run } from "./run.ts";
import { hasColour, hasUnicode, type Surroundings, widthIn } from "./terminal.ts";

const around: Surroundings = {
  env: process.env,
  platform: process.platform,
  isTerminal: process.stdout.isTTY === true,
  columns: process.stdout.columns,
};

// A reader that has seen enough (`| head`) closes the pipe: that is no failure.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
  process.exit();
});

process.exitCode = await run(
  process.argv.slice(2),
  {
    width: widthIn(around),
    colour: hasColour(around),
    unicode: hasUnicode(around),
    asks: process.stdin.isTTY === true,
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
  },
  process.cwd(),
).catch((error: unknown) => {
  // A mistake of the program says nothing about a machine, so it is not status 1.
  process.stderr.write(
    `Waywright made a mistake and stopped: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`,
  );
  return 2;
});
