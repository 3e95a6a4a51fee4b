// Files: the texts of the shop as they are, with completion, help on every key and mistakes underlined. What is typed counts on every page at once.
import type { JSX } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { type Finding, findingSentence } from "../../../kernel/finding.ts";
import { FileTree } from "../files/file-tree.tsx";
import { type Editor, openEditor } from "../files/editor.ts";
import { applied, plainOf } from "../files/raw.ts";
import { answer, ask, disk, diskFindings, edits, folder, newest, pass, texts, trail } from "../model/desk.ts";
import { textTyped } from "../model/edits.ts";
import { conflicts } from "../model/keep.ts";
import { askToKeep } from "../model/keep-open.ts";
import { counted } from "../model/numbers.ts";
import { linkTo, route } from "../model/place.ts";
import { Page } from "../shell/page.tsx";
import "../styles/entry.css";
import "../styles/files.css";

export function FilesPage(): JSX.Element {
  const all = texts.value;
  const wanted = route.value.own.get("file");
  const file = wanted ?? (all.has("shop.yaml") ? "shop.yaml" : undefined);
  const findings = [...diskFindings.value, ...(answer.value?.findings ?? [])];
  const mine = findings.filter((f) => f.place.file === file);
  useEffect(() => {
    const keys = (event: KeyboardEvent): void => {
      if (event.defaultPrevented || event.key.toLowerCase() !== "s" || !(event.ctrlKey || event.metaKey)) return;
      event.preventDefault();
      askToKeep();
    };
    addEventListener("keydown", keys);
    return () => removeEventListener("keydown", keys);
  }, []);
  return (
    <Page crumb={folder.value ?? ""} title="Files" class="files" sentence={<Told findings={findings} />}>
      <FileTree paths={[...all.keys()]} chosen={file ?? null} findings={findings} />
      <section class="file" aria-label={file ?? "No file"}>
        {file === undefined ? (
          <p>There is no file yet. Begin with shop.yaml: “New file” at the left.</p>
        ) : all.has(file) ? (
          <FileShown key={file} file={file} raw={all.get(file) ?? ""} findings={mine} />
        ) : (
          <p>
            There is no file {file}. <a href={linkTo({ page: "files" })}>To shop.yaml</a>
          </p>
        )}
      </section>
    </Page>
  );
}

function Told({ findings }: { findings: readonly Finding[] }): JSX.Element {
  const mistakes = findings.filter((f) => f.severity === "error").length;
  const notes = findings.length - mistakes;
  if (newest.value === null) return <span class="q">Reading the files …</span>;
  const said = notes === 0 ? "" : `, ${counted(notes, "note")}`;
  return mistakes === 0 ? (
    <>The files can all be read{said}.</>
  ) : (
    <>
      <b>{counted(mistakes, "mistake")}</b> in the files{said}.
    </>
  );
}

function FileShown({ file, raw, findings }: { file: string; raw: string; findings: readonly Finding[] }): JSX.Element {
  const box = useRef<HTMLDivElement>(null);
  const editor = useRef<Editor | null>(null);
  /** What the editor holds, as it would lie on disk. */
  const held = useRef(raw);
  const kept = disk.value.get(file)?.text;
  const isRecord = file.split("/")[1] === "records";
  useEffect(() => {
    if (box.current === null) return undefined;
    const opened = openEditor({
      parent: box.current,
      file,
      text: plainOf(held.current),
      fixedTo: isRecord ? plainOf(disk.value.get(file)?.text ?? "").length : 0,
      changed: (changes) => {
        const next = applied(held.current, changes);
        held.current = next;
        trail.value = textTyped(trail.value, file, next === disk.value.get(file)?.text ? null : next, [], file);
      },
      keep: askToKeep,
    });
    editor.current = opened;
    const line = Number(route.value.own.get("line") ?? "");
    if (line > 0) opened.goTo(line, Number(route.value.own.get("column") ?? "1"));
    return () => opened.close();
  }, [file]);
  // Undone, kept, or changed on disk: the editor follows. What is drawn may be a letter behind what is typed; the texts never are.
  useEffect(() => {
    const now = texts.peek().get(file);
    if (now === undefined || now === held.current) return;
    held.current = now;
    editor.current?.show(plainOf(now));
  }, [raw]);
  const told = JSON.stringify(findings);
  const isNew = newest.value?.pass === pass.value;
  useEffect(() => {
    if (isNew) editor.current?.mark(findings);
    // Findings are compared by what they say.
    // oxlint-disable-next-line react-hooks/exhaustive-deps
  }, [told, isNew]);
  return (
    <>
      <div class="sec">
        <h2>
          {file} {kept === undefined ? <span class="q">new</span> : null}
        </h2>
        <Typed file={file} />
      </div>
      {isRecord ? <p class="small q2">What stands in a record stays; it may grow at its end. A newer record supersedes it.</p> : null}
      <div class="editor" ref={box} />
      <p class="small q keys">
        Ctrl-Space offers what fits, Ctrl-S shows and keeps, F8 goes to the next finding, Ctrl-] indents; Tab leads out.
      </p>
      <Findings findings={findings} goTo={(f) => editor.current?.goTo(f.place.line, f.place.column)} />
    </>
  );
}

/** What is not on disk yet: text typed here, and values typed into fields of rooms, which lie over the text. */
function Typed({ file }: { file: string }): JSX.Element {
  const [over, setOver] = useState<readonly string[]>([]);
  const { values } = edits.value;
  useEffect(() => {
    let isCurrent = true;
    void ask("valuesIn", { path: file, values: [...values.keys()] }).then(({ addresses }) => isCurrent && setOver(addresses));
    return () => {
      isCurrent = false;
    };
  }, [values, file]);
  const isTyped = edits.value.texts.has(file);
  const write = async (): Promise<void> => {
    const { files } = await ask("kept", null);
    const text = files.find((f) => f.path === file)?.text;
    if (text !== undefined) trail.value = textTyped(trail.value, file, text, over);
  };
  return (
    <p class="small state" role="status">
      {conflicts.value.has(file) ? <span class="wrong">changed here and on disk</span> : isTyped ? "typed, not kept" : ""}
      {over.length === 0 ? null : (
        <>
          {counted(over.length, "value")} typed in rooms {over.length === 1 ? "lies" : "lie"} over this text{" "}
          <button type="button" class="link" onClick={() => void write()}>
            write {over.length === 1 ? "it" : "them"} in
          </button>
        </>
      )}
    </p>
  );
}

function Findings({ findings, goTo }: { findings: readonly Finding[]; goTo: (f: Finding) => void }): JSX.Element {
  const sorted = findings.toSorted((a, b) => a.place.line - b.place.line || a.place.column - b.place.column);
  return (
    <section class="findings" aria-labelledby="findings">
      <h3 id="findings">{findings.length === 0 ? "Nothing to say about this file" : counted(findings.length, "finding")}</h3>
      <ol>
        {sorted.map((f) => (
          <li key={`${f.place.line}:${f.place.column} ${f.code} ${f.says}`} class={f.severity}>
            <button type="button" class="link" onClick={() => goTo(f)}>
              {f.place.line}:{f.place.column}
            </button>
            <span>
              <b>{f.severity === "error" ? f.code : `${f.code} (note)`}</b> {findingSentence(f)}
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}
