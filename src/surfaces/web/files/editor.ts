// The text editor of the file view. Everything that is specific to it is here, so that no other page loads it.
import { autocompletion, type CompletionContext, type CompletionResult, completionKeymap } from "@codemirror/autocomplete";
import { defaultKeymap, history, historyKeymap } from "@codemirror/commands";
import { yaml } from "@codemirror/lang-yaml";
import { HighlightStyle, indentUnit, syntaxHighlighting } from "@codemirror/language";
import { type Diagnostic, lintGutter, lintKeymap, setDiagnostics } from "@codemirror/lint";
import { Annotation, type ChangeSet, EditorState, type Extension, Prec } from "@codemirror/state";
import {
  drawSelection,
  EditorView,
  highlightActiveLine,
  highlightActiveLineGutter,
  hoverTooltip,
  keymap,
  lineNumbers,
  type Tooltip,
} from "@codemirror/view";
import { tags } from "@lezer/highlight";
import { prettyUnit } from "../../../kernel/display.ts";
import { type Finding, findingSentence } from "../../../kernel/finding.ts";
import { ask } from "../model/desk.ts";
import { type Change, difference } from "./raw.ts";
import { lineStarts, stretchOf } from "./spots.ts";

interface EditorProps {
  readonly parent: HTMLElement;
  readonly file: string;
  readonly text: string;
  /** What stands up to here is not to be changed: records only grow. */
  readonly fixedTo: number;
  readonly changed: (changes: readonly Change[]) => void;
  readonly keep: () => void;
}

export interface Editor {
  /** Another text from outside; the cursor stays where it is. */
  readonly show: (text: string) => void;
  readonly mark: (findings: readonly Finding[]) => void;
  readonly goTo: (line: number, column: number) => void;
  readonly close: () => void;
}

/** A change that came from outside and is not told again. */
const fromOutside = Annotation.define<true>();

export function openEditor({ parent, file, text, fixedTo, changed, keep }: EditorProps): Editor {
  const view = new EditorView({
    parent,
    state: EditorState.create({
      doc: text,
      extensions: [
        EditorView.cspNonce.of(document.querySelector<HTMLMetaElement>("meta[property=csp-nonce]")?.nonce ?? ""),
        looks,
        syntaxHighlighting(colours),
        file.endsWith(".yaml") ? yaml() : [],
        lineNumbers(),
        lintGutter(),
        highlightActiveLine(),
        highlightActiveLineGutter(),
        drawSelection(),
        history(),
        indentUnit.of("  "),
        EditorState.tabSize.of(2),
        autocompletion({ override: [(context) => completions(file, context)], icons: false, activateOnTyping: true }),
        hoverTooltip((at, pos) => help(file, at, pos)),
        Prec.high(
          keymap.of([
            {
              key: "Mod-s",
              preventDefault: true,
              run: () => {
                keep();
                return true;
              },
            },
          ]),
        ),
        // Tab is left to the browser: it leads out of the editor, as out of every field.
        keymap.of([...completionKeymap, ...lintKeymap, ...historyKeymap, ...defaultKeymap]),
        EditorView.contentAttributes.of({ "aria-label": `Text of ${file}`, "data-own-history": "", tabindex: "0" }),
        fixedTo > 0 ? EditorState.changeFilter.of((tr) => tr.annotation(fromOutside) === true || startsBehind(tr.changes, fixedTo)) : [],
        EditorView.updateListener.of((update) => {
          if (!update.docChanged || update.transactions.some((tr) => tr.annotation(fromOutside))) return;
          const changes: Change[] = [];
          update.changes.iterChanges((from, to, _from, _to, inserted) => changes.push({ from, to, insert: inserted.toString() }));
          changed(changes);
        }),
      ],
    }),
  });
  return {
    show(next) {
      const change = difference(view.state.doc.toString(), next);
      if (change) view.dispatch({ changes: change, annotations: fromOutside.of(true) });
    },
    mark(findings) {
      view.dispatch(setDiagnostics(view.state, diagnosticsOf(findings, view.state.doc.toString())));
    },
    goTo(line, column) {
      const { from, to } = stretchOf({ file, line, column, endLine: line, endColumn: column }, view.state.doc.toString());
      view.dispatch({ selection: { anchor: Math.min(from, to) }, effects: EditorView.scrollIntoView(from, { y: "center" }) });
      view.focus();
    },
    close: () => view.destroy(),
  };
}

function startsBehind(changes: ChangeSet, place: number): boolean {
  let isBehind = true;
  changes.iterChangedRanges((from) => {
    isBehind &&= from >= place;
  });
  return isBehind;
}

function diagnosticsOf(findings: readonly Finding[], text: string): Diagnostic[] {
  const starts = lineStarts(text);
  return findings
    .map((f): Diagnostic => {
      const stretch = stretchOf(f.place, text, starts);
      const isWord = wordForm.test(text.slice(stretch.from, stretch.to)) && f.nearest !== undefined && wordForm.test(f.nearest);
      return {
        ...stretch,
        severity: f.severity === "error" ? "error" : "info",
        message: findingSentence(f),
        source: f.code,
        ...(isWord && f.nearest !== undefined ? { actions: [replaced(f.nearest)] } : {}),
      };
    })
    .toSorted((a, b) => a.from - b.from || a.to - b.to);
}

/** A misspelt word can be put right by one press; a quantity has to be looked at. */
const wordForm = /^[a-z][\w./-]*$/i;

function replaced(word: string): NonNullable<Diagnostic["actions"]>[number] {
  return { name: `write ${word}`, apply: (view, from, to) => view.dispatch({ changes: { from, to, insert: word } }) };
}

async function completions(file: string, context: CompletionContext): Promise<CompletionResult | null> {
  const text = context.state.doc.toString();
  const found = await ask("completeAt", { file, text, offset: context.pos }).catch(() => null);
  // Nothing is offered where nothing was typed, unless it is asked for or a value is due.
  const line = context.state.doc.lineAt(context.pos);
  const isDue = /:\s+$/.test(text.slice(line.from, context.pos));
  if (found === null || context.aborted || (found.from === context.pos && !context.explicit && !isDue)) return null;
  return {
    from: found.from,
    options: found.candidates.map((c) => ({ label: c.label, apply: c.insert, ...(c.detail === "" ? {} : { info: prettyUnit(c.detail) }) })),
    // A plain word narrows what is there already; a path or a value asks again.
    validFor: /^[\w-]*$/,
  };
}

async function help(file: string, view: EditorView, pos: number): Promise<Tooltip | null> {
  const found = await ask("hoverAt", { file, text: view.state.doc.toString(), offset: pos }).catch(() => null);
  if (found === null) return null;
  const { path, says } = found;
  return {
    pos,
    above: true,
    create: () => {
      const dom = document.createElement("div");
      dom.className = "cm-help";
      const head = document.createElement("b");
      head.textContent = path;
      const body = document.createElement("p");
      body.textContent = says;
      dom.append(head, body);
      return { dom };
    },
  };
}

/** Few tones: keys are what one looks for, remarks what one reads past. */
const colours = HighlightStyle.define([
  { tag: [tags.propertyName, tags.definition(tags.propertyName)], color: "var(--accent)" },
  { tag: [tags.comment, tags.lineComment], color: "var(--ink-3)", fontStyle: "italic" },
  { tag: [tags.punctuation, tags.separator, tags.squareBracket, tags.brace], color: "var(--ink-3)" },
  { tag: [tags.string, tags.content, tags.attributeValue, tags.keyword], color: "var(--ink)" },
]);

const looks: Extension = EditorView.theme({
  "&": { height: "100%", color: "var(--ink)", backgroundColor: "var(--sunk)", border: "1px solid var(--field)" },
  "&.cm-focused": { outline: "2px solid var(--accent)", outlineOffset: "2px" },
  ".cm-scroller": {
    fontFamily: 'ui-monospace, "Cascadia Mono", "DejaVu Sans Mono", monospace',
    fontSize: "var(--code-size)",
    lineHeight: "1.5",
  },
  ".cm-content": { caretColor: "var(--ink)", padding: "6px 0" },
  ".cm-cursor": { borderLeftColor: "var(--ink)", borderLeftWidth: "2px" },
  "&.cm-focused .cm-selectionBackground, .cm-selectionBackground": { backgroundColor: "var(--wash)" },
  ".cm-activeLine": { backgroundColor: "transparent", boxShadow: "inset 0 0 0 0.75px var(--grid-major)" },
  ".cm-gutters": { backgroundColor: "var(--paper)", color: "var(--ink-3)", borderRight: "0.75px solid var(--rule)" },
  ".cm-activeLineGutter": { backgroundColor: "transparent", color: "var(--ink)" },
  ".cm-gutter-lint": { width: "16px" },
  ".cm-lint-marker": { width: "12px", height: "12px" },
  ".cm-lint-marker-error": { content: "none", backgroundColor: "var(--fails)" },
  ".cm-lint-marker-info": { content: "none", border: "1.5px solid var(--ink-3)", borderRadius: "50%" },
  ".cm-lintRange": { backgroundImage: "none", paddingBottom: "0" },
  ".cm-lintRange-error": { textDecoration: "underline wavy var(--fails) 1px", textUnderlineOffset: "3px" },
  ".cm-lintRange-info": { textDecoration: "underline dotted var(--ink-3) 1.5px", textUnderlineOffset: "3px" },
  ".cm-lintRange-active": { backgroundColor: "var(--wash)" },
  ".cm-tooltip": {
    border: "1px solid var(--ink)",
    backgroundColor: "var(--sheet)",
    color: "var(--ink)",
    font: "var(--type-text)",
    maxWidth: "460px",
  },
  ".cm-tooltip-autocomplete > ul": { fontFamily: "inherit", maxHeight: "260px" },
  ".cm-tooltip-autocomplete > ul > li": { padding: "3px 10px", lineHeight: "20px" },
  ".cm-tooltip-autocomplete > ul > li[aria-selected]": { backgroundColor: "var(--accent)", color: "var(--on-accent)" },
  ".cm-completionMatchedText": { textDecoration: "none", fontWeight: "600" },
  ".cm-completionInfo": { padding: "6px 10px", width: "320px", fontSize: "13px", lineHeight: "18px" },
  ".cm-help": { padding: "6px 10px", fontSize: "13px", lineHeight: "18px" },
  ".cm-diagnostic": { padding: "6px 10px", fontSize: "13px", lineHeight: "18px", borderLeft: "none", maxWidth: "460px" },
  ".cm-diagnosticSource": { fontSize: "12px", color: "var(--ink-3)", opacity: "1" },
  ".cm-diagnosticAction": {
    backgroundColor: "var(--sheet)",
    color: "var(--accent)",
    border: "1px solid var(--field)",
    borderRadius: "2px",
    padding: "2px 8px",
    fontSize: "13px",
  },
  ".cm-panels": { backgroundColor: "var(--sheet)", color: "var(--ink)" },
});
