// The table of commands: parsing, help and completion are all read from it.

export interface Flag {
  readonly name: string;
  /** What follows it; without it the flag stands alone. */
  readonly takes?: string;
  readonly many?: true;
  readonly says: string;
  /** The only words it takes. */
  readonly words?: readonly string[];
}

export interface Command {
  readonly name: string;
  /** What is written behind the name. */
  readonly takes: string;
  readonly says: string;
  /** A paragraph each. */
  readonly more: readonly string[];
  readonly flags: readonly Flag[];
  readonly examples: readonly string[];
  /** It reads a shop folder, which may be named. */
  readonly shop: boolean;
  /** Words that its first argument may be. */
  readonly words?: readonly string[];
}

export const shells = ["bash", "zsh", "fish"] as const;

const quick: Flag = { name: "quick", says: "leave out what must be simulated; estimates stand in; check tries no remedies" };
const options: Flag = { name: "option", takes: "NAME", many: true, says: "lay an option over the machine; may be given again" };
const machine: Flag = { name: "machine", takes: "NAME", says: "look at this machine only" };

/** Every command takes these. */
const commonFlags: readonly Flag[] = [
  { name: "json", says: "answer as JSON with sorted keys, and nothing else" },
  { name: "width", takes: "N", says: "lines of N columns instead of at most 80" },
  { name: "help", says: "what the command does" },
];

export const commands: readonly Command[] = [
  {
    name: "new",
    takes: "DIR",
    says: "ask some twenty questions and write a shop folder",
    more: [
      "Every question may be left empty or answered with: don't know. The folder is checked at once: what already fails, and the first three things to find out before money is spent.",
      "A folder that is not empty is left alone.",
    ],
    flags: [
      { name: "from", takes: "FILE", says: "answers from a YAML or JSON map instead of asking" },
      { name: "questions", says: "print the questions with the names of their answers, and write nothing" },
    ],
    examples: ["waywright new my-shop", "waywright new my-shop --from answers.yaml", "waywright new --questions"],
    shop: false,
  },
  {
    name: "check",
    takes: "[DIR]",
    says: "every check, with remedies and what to measure next",
    more: [
      "Findings in the files come first. Rooms and checks stand in the order of the low end of their margin (capacity over demand), the worst first. Those that hold are counted; one that fails or is open shows what it wants and has, what would lift it, and which reading would decide it. A verdict is of the model: which demand meets which capacity, nothing more.",
    ],
    flags: [
      { name: "all", says: "every check in full: address, both sides, all remedies and options, findings, notices" },
      quick,
      options,
      machine,
    ],
    examples: ["waywright check examples/heron", "waywright check --all --machine lathe", "waywright check --option reconnect-low"],
    shop: true,
  },
  {
    name: "explain",
    takes: "[DIR] FIGURE|ADDRESS|CHECK",
    says: "the working of a figure: formula, numbers, where each came from",
    more: [
      "An id that stands for several things (lathe and mill, two axes) asks for an address and lists them. Some words of an address in their order do as well, the last one among them: drag-knob rough torque-holds. A check is shown in full, with its remedies and options tried. For an input: the value that counts, those that lost against it, where each stands, how to measure it.",
    ],
    flags: [{ name: "depth", takes: "N", says: "open the needs N levels down" }, quick, options, machine],
    examples: ["waywright explain supply.current", "waywright explain lathe/supply.run.length"],
    shop: true,
  },
  {
    name: "work",
    takes: "FIGURE NAME=VALUE ...",
    says: "one figure from values given on the line, without a shop",
    more: [
      'Values are written as in the files and may be ranges: length="18 to 20 m". A list of readings is 0, 30, 90 deg; from a table of readings it is name=@file.csv:column, else the first column of numbers; a head like pressure/bar carries the unit. A need that is not given is worked out from its own needs, or takes its typical band.',
      "--cases takes a JSON list of { id, figure, with: { name: value or list of values }, in: unit } and prints, in the same order, the id with value, unit and text, or with the error of that case. Values are in SI unless a unit is asked for.",
    ],
    flags: [
      { name: "list", says: "figures with symbol, unit and needs; a word narrows them" },
      { name: "cases", takes: "FILE", says: "many cases at once, JSON in and JSON out" },
      { name: "in", takes: "UNIT", says: "the unit of the answer" },
      { name: "units", takes: "SYSTEM", says: "units in which numbers are shown", words: ["metric", "inch"] },
    ],
    examples: [
      "waywright work --list voltage",
      'waywright work supply.load-test-resistance V_0="242.6 V" V_1="238.9 V" I_1="21 A" phases=1',
    ],
    shop: false,
  },
  {
    name: "compare",
    takes: "[DIR] OPTION ...",
    says: "options against the machine as found",
    more: [
      "Several options laid over together are joined by +. Shown are the checks whose verdict or margin changes, the figures that change most, cost and hours; 'better in 93 of 100' counts the same imagined shops with and without the option.",
    ],
    flags: [{ name: "all", says: "checks that hold in every column too, and every thing alike" }, quick, machine],
    examples: ["waywright compare reconnect-low", "waywright compare reconnect-low reconnect-low+more-air"],
    shop: true,
  },
  {
    name: "sweep",
    takes: "[DIR] INPUT RANGE FIGURE ...",
    says: "figures along a range of one input",
    more: ["A check may be named instead of a figure: its margin is shown."],
    flags: [
      { name: "steps", takes: "N", says: "points along the range (11)" },
      { name: "csv", says: "the table as CSV, in the units shown in its head" },
      { name: "svg", takes: "FILE", says: "draw one or two figures into a file" },
      quick,
      options,
      machine,
    ],
    examples: ['waywright sweep lathe/supply.run.length "5 to 60 m" supply.voltage-at-machine'],
    shop: true,
  },
  {
    name: "open",
    takes: "[DIR]",
    says: "print the checks and open the workbench in a browser",
    more: ["The workbench is served to this computer only, until Ctrl-C."],
    flags: [
      { name: "port", takes: "N", says: "the port to serve at; any free one when left out" },
      { name: "no-browser", says: "print the address and open nothing" },
      quick,
      machine,
    ],
    examples: ["waywright open examples/heron"],
    shop: true,
  },
  {
    name: "help",
    takes: "[COMMAND]",
    says: "this list, or one command in full",
    more: [],
    flags: [],
    examples: ["waywright help work"],
    shop: false,
  },
  {
    name: "completion",
    takes: shells.join("|"),
    says: "a script that lets the shell complete commands and flags",
    more: ["bash: waywright completion bash > ~/.local/share/bash-completion/completions/waywright"],
    flags: [],
    examples: ["waywright completion fish"],
    shop: false,
    words: shells,
  },
];

export const flagsOf = (c: Command): readonly Flag[] => [...c.flags, ...commonFlags];
