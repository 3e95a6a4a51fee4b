// What a figure takes, as fields: units as typed, ranges allowed; what is left out is typical, worked out, or not needed.
import type { JSX } from "preact";
import { useId, useState } from "preact/hooks";
import type { WorkError } from "../../../kernel/work.ts";
import { prettyUnit } from "../../../kernel/display.ts";
import { capital } from "../model/names.ts";
import { Icon } from "../parts/icon.tsx";
import { Svg } from "../parts/svg.tsx";
import type { FormField } from "../worker/working-out.ts";
import { useLatest } from "./latest.ts";
import { typed, typeValue } from "./typed.ts";

interface FieldsProps {
  readonly fields: readonly FormField[];
  /** Fields of the figure itself go by their names in the formula; those below it by their ids. */
  readonly by: "name" | "id";
  readonly error: WorkError | null;
  /** Ids that have a field of their own elsewhere. */
  readonly elsewhere: ReadonlySet<string>;
}

export function FormFields({ fields, by, error, elsewhere }: FieldsProps): JSX.Element {
  return (
    <>
      {fields.map((f) => (
        <FormRow key={f.name} field={f} name={by === "name" ? f.name : f.id} error={error} elsewhere={elsewhere} />
      ))}
    </>
  );
}

interface RowProps {
  readonly field: FormField;
  readonly name: string;
  readonly error: WorkError | null;
  readonly elsewhere: ReadonlySet<string>;
}

function FormRow({ field, name, error, elsewhere }: RowProps): JSX.Element {
  const id = useId();
  const text = typed.value.values.get(name) ?? "";
  const isBad = error?.name === name;
  const isWanted = error?.missing?.some((m) => m === name || m === field.id) ?? false;
  const says = isBad ? error.message.replace(`${field.says}: `, "") : text === "" ? whenLeftOut(field, isWanted) : "";
  return (
    <div class={`row${isBad ? " is-bad" : ""}${isWanted && text === "" ? " is-wanted" : ""}`}>
      <label for={id}>
        {capital(field.says)} {field.mathml === "" ? null : <Svg class="s" text={field.mathml} />}
      </label>
      <Control id={id} field={field} text={text} isBad={isBad} type={(next) => typeValue(name, next)} />
      <p id={`${id}-note`} class={`note small ${isBad ? "wrong" : isWanted ? "wanted" : "q"}`} role={isBad ? "alert" : undefined}>
        {isWanted && !isBad ? <Icon name="dont-know" size={12} /> : null}
        {says}
      </p>
      {field.isFigure && text === "" ? <Below id={field.id} error={error} elsewhere={elsewhere} /> : null}
    </div>
  );
}

/** What stands in for a field that is left empty. */
function whenLeftOut({ typical, optional, isFigure, form, words }: FormField, isWanted: boolean): string {
  if (form === "list") return "several, such as 0, 30, 90 deg";
  if (isWanted) return "wanted";
  if (typical !== null) return words.length > 0 ? `typical ${typical}` : "typical where left out";
  if (optional) return "may be left out";
  return isFigure ? "worked out where left out" : "";
}

interface ControlProps {
  readonly id: string;
  readonly field: FormField;
  readonly text: string;
  readonly isBad: boolean;
  readonly type: (text: string) => void;
}

function Control({ id, field, text, isBad, type }: ControlProps): JSX.Element {
  const said = { id, "aria-describedby": `${id}-note`, "aria-invalid": isBad };
  if (field.words.length > 0) {
    return (
      <select {...said} value={text} onChange={(event) => type(event.currentTarget.value)}>
        <option value="">{field.typical ?? ""}</option>
        {field.words.map((word) => (
          <option key={word} value={word}>
            {word.replaceAll("-", " ")}
          </option>
        ))}
      </select>
    );
  }
  const example = field.typical ?? field.examples[0];
  return (
    <input
      {...said}
      type="text"
      class={`entry num${isBad ? " bad" : ""}${field.typical === null ? "" : " typical"}`}
      value={text}
      placeholder={example === undefined ? "" : field.typical === null ? `such as ${prettyUnit(example)}` : prettyUnit(example)}
      autocomplete="off"
      spellcheck={false}
      onInput={(event) => type(event.currentTarget.value)}
    />
  );
}

/** A need that is a figure itself may be given, or worked out from what it takes in turn. */
function Below({ id, error, elsewhere }: { id: string; error: WorkError | null; elsewhere: ReadonlySet<string> }): JSX.Element {
  const [isOpen, setOpen] = useState(false);
  const { reply } = useLatest("figureForm", isOpen ? { figure: id } : null);
  const fields = (reply?.fields ?? []).filter((f) => !elsewhere.has(f.id));
  return (
    <details class="below" open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary class="small">from what</summary>
      <FormFields fields={fields} by="id" error={error} elsewhere={elsewhere} />
      {reply !== null && fields.length === 0 ? <p class="small q2">All that it takes has a field here already.</p> : null}
    </details>
  );
}
