// Help and completion scripts, printed from the table of commands.
import { type Command, commands, type Flag, flagsOf } from "./commands.ts";
import { type Page, pageFor } from "./terminal.ts";
import { table } from "./text.ts";

const flagText = (f: Flag): string => `--${f.name}${f.takes === undefined ? "" : ` ${f.takes}`}`;

export function helpPage(width: number, command?: Command): Page {
  const page = pageFor({ width });
  if (command) describe(page, command, width);
  else overview(page, width);
  return page;
}

function overview(page: Page, width: number): void {
  page.say(
    "Waywright is the engineering half of a machine-tool retrofit: one model of shop and machine in text files, every number with its working.",
  );
  page.gap();
  page.add(
    ...table(
      [{ head: "" }, { head: "" }],
      commands.map((c) => [`waywright ${c.name}`, c.says]),
      width,
    ),
  );
  page.add(...table([{ head: "" }, { head: "" }], [["waywright --version", "the version"]], width));
  page.gap();
  page.say(
    "A shop or machine folder may be given to every command that reads one; otherwise it is the nearest folder upward with a shop.yaml.",
  );
  page.say("Exit status: 0 nothing fails, 1 a check fails, 2 bad input or usage.");
  page.say("waywright help COMMAND says more.");
}

function describe(page: Page, c: Command, width: number): void {
  page.say(`waywright ${c.name} ${c.takes}`.trimEnd());
  page.gap();
  page.say(`${c.says[0]?.toUpperCase()}${c.says.slice(1)}.`);
  for (const paragraph of c.more) {
    page.gap();
    page.say(paragraph);
  }
  page.gap();
  page.add(
    ...table(
      [{ head: "" }, { head: "" }],
      flagsOf(c).map((f) => [flagText(f), f.says]),
      width,
      "  ",
    ),
  );
  page.gap();
  for (const e of c.examples) page.say(e, "  ", "    ");
}

/** A completion script for a shell. Folders and files are completed by the shell itself. */
export function completion(shell: "bash" | "zsh" | "fish"): string {
  return { bash: bashScript, zsh: zshScript, fish: fishScript }[shell]();
}

const names = (): string => commands.map((c) => c.name).join(" ");
const quoted = (text: string): string => `'${text.replaceAll("'", "'\\''")}'`;

function bashScript(): string {
  const cases = commands.map((c) => {
    const own = c.name === "help" ? names() : (c.words ?? []).join(" ");
    return `    ${c.name}) flags="${flagsOf(c)
      .map((f) => `--${f.name}`)
      .join(" ")}"; own="${own}" ;;`;
  });
  return `# bash completion for waywright
_waywright() {
  local word="\${COMP_WORDS[COMP_CWORD]}" flags="" own=""
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W "${names()} --version --help" -- "$word"))
    return
  fi
  case "\${COMP_WORDS[1]}" in
${cases.join("\n")}
  esac
  case "$word" in
    -*) COMPREPLY=($(compgen -W "$flags" -- "$word")) ;;
    *) COMPREPLY=($(compgen -W "$own" -- "$word") $(compgen -f -- "$word")) ;;
  esac
}
complete -o filenames -F _waywright waywright
`;
}

function zshScript(): string {
  const list = commands.map((c) => `    ${quoted(`${c.name}:${c.says}`)}`);
  const cases = commands.map((c) => {
    const flags = flagsOf(c).map((f) =>
      quoted(
        `${f.many ? "*" : ""}--${f.name}[${f.says.replaceAll(/[[\]:]/g, " ")}]${f.takes === undefined ? "" : `:${f.takes}:${f.words ? `(${f.words.join(" ")})` : "_files"}`}`,
      ),
    );
    const own = c.name === "help" ? names() : (c.words ?? []).join(" ");
    return `    ${c.name}) _arguments ${flags.join(" ")} ${quoted(own === "" ? "*:argument:_files" : `1:argument:(${own})`)} ;;`;
  });
  return `#compdef waywright
_waywright() {
  local -a commands
  commands=(
${list.join("\n")}
  )
  if (( CURRENT == 2 )); then
    _describe command commands
    return
  fi
  local command="$words[2]"
  shift words
  (( CURRENT-- ))
  case "$command" in
${cases.join("\n")}
  esac
}
compdef _waywright waywright
`;
}

function fishScript(): string {
  const lines = ["# fish completion for waywright"];
  for (const c of commands) {
    const when = `-n "__fish_seen_subcommand_from ${c.name}"`;
    lines.push(`complete -c waywright -n __fish_use_subcommand -a ${c.name} -d ${quoted(c.says)}`);
    const own = c.name === "help" ? names() : (c.words ?? []).join(" ");
    if (own !== "") lines.push(`complete -c waywright ${when} -f -a "${own}"`);
    for (const f of flagsOf(c)) {
      const value = f.takes === undefined ? "" : f.words ? ` -x -a "${f.words.join(" ")}"` : " -r";
      lines.push(`complete -c waywright ${when} -l ${f.name}${value} -d ${quoted(f.says)}`);
    }
  }
  return `${lines.join("\n")}\n`;
}
