// One input: label and source at the left, field at the right, "don't know" always possible, an error in words where it belongs.
import type { JSX } from "preact";
import { useEffect, useId, useRef } from "preact/hooks";
import type { PatchValue } from "../../../kernel/model/plain.ts";
import { edits, newest, trail } from "../model/desk.ts";
import { left, restored, typed } from "../model/edits.ts";
import { isOverruled, isUnknown, textInField, valueOf } from "../model/field-text.ts";
import { capital } from "../model/names.ts";
import { workingLink } from "../model/place.ts";
import type { Field } from "../worker/fields.ts";
import { Icon } from "./icon.tsx";
import { Source } from "./source.tsx";
import { Ticked } from "./ticked.tsx";

const put = (field: Field, value: PatchValue, typing: string | null = null): void => {
  trail.value = typed(trail.value, field.address, value, typing);
};

/** A text typed: what the file says already is no edit. */
function type(field: Field, text: string): void {
  const meant = valueOf(field, text);
  if (meant === "same") trail.value = restored(trail.value, field.address, field.address);
  else put(field, meant.value, field.address);
}

export function FieldRow({ field, isLit }: { field: Field; isLit: boolean }): JSX.Element {
  const id = useId();
  const row = useRef<HTMLDivElement>(null);
  const edit = edits.value.values.get(field.address);
  const error = edit === undefined ? null : (newest.value?.refused.find((r) => r.address === field.address)?.says ?? null);
  const unknown = isUnknown(field, edit);
  const overruled = isOverruled(field) && edit === undefined;
  useEffect(() => {
    if (!isLit) return;
    row.current?.scrollIntoView({ block: "center" });
    row.current?.querySelector<HTMLElement>("input, select")?.focus();
  }, [isLit]);
  const soft =
    unknown ||
    field.state === "unknown" ||
    field.state === "absent" ||
    (edit === undefined && (field.origin.by === "typical" || field.origin.by === "estimate"));
  return (
    <div ref={row} class={`fld${soft ? " unk" : ""}${error === null ? "" : " bad"}${overruled ? " ro" : ""}${isLit ? " lit" : ""}`}>
      <label for={id}>{capital(field.says)}</label>
      <span class="in">
        <Control id={id} field={field} edit={edit} error={error} overruled={overruled} />
        {overruled ? null : (
          <button
            type="button"
            class="dontknow"
            aria-pressed={unknown}
            aria-label={`Don't know: ${field.says}`}
            title="Don't know"
            onClick={() =>
              unknown
                ? (trail.value =
                    field.written === "unknown" ? typed(trail.value, field.address, null) : restored(trail.value, field.address))
                : put(field, "unknown")
            }
          >
            <Icon name="dont-know" size={14} />
          </button>
        )}
      </span>
      <span class="from" id={`${id}-from`}>
        <From field={field} edit={edit} error={error} />
      </span>
      {error === null ? null : (
        <span class="err" id={`${id}-err`} role="alert">
          <Ticked text={error} />
        </span>
      )}
    </div>
  );
}

interface ControlProps {
  readonly id: string;
  readonly field: Field;
  readonly edit: PatchValue | undefined;
  readonly error: string | null;
  readonly overruled: boolean;
}

function Control({ id, field, edit, error, overruled }: ControlProps): JSX.Element {
  const text = textInField(field, edit);
  const said = { id, "aria-describedby": error === null ? `${id}-from` : `${id}-from ${id}-err`, "aria-invalid": error !== null };
  const leave = (): void => {
    trail.value = left(trail.value);
  };
  if (field.form === "word" && !overruled) {
    const standIn = field.state === "there" && field.text !== "" ? field.text : "not written";
    return (
      <select
        {...said}
        value={isUnknown(field, edit) ? "unknown" : text}
        required={field.required}
        onChange={(event) => type(field, event.currentTarget.value)}
        onBlur={leave}
      >
        <option value="">{standIn}</option>
        {field.words.map((word) => (
          <option key={word} value={word}>
            {word.replaceAll("-", " ")}
          </option>
        ))}
        <option value="unknown">don't know</option>
        {field.allowsNone ? <option value="none">none</option> : null}
      </select>
    );
  }
  const standIn =
    field.state === "there" ? field.text : field.state === "wanted" ? "wanted" : field.state === "unknown" ? "" : (field.examples[0] ?? "");
  return (
    <input
      {...said}
      type="text"
      value={text}
      placeholder={standIn}
      readOnly={overruled}
      spellcheck={false}
      autocomplete="off"
      onInput={(event) => type(field, event.currentTarget.value)}
      onBlur={leave}
    />
  );
}

function From({ field, edit, error }: { field: Field; edit: PatchValue | undefined; error: string | null }): JSX.Element {
  if (error !== null) return <span class="src wrong">cannot be read</span>;
  if (edit !== undefined) {
    return (
      <span class="src">
        <Icon name={edit === "unknown" ? "dont-know" : "typed"} size={13} />
        {edit === null ? "taken away" : edit === "unknown" ? "don't know" : "not kept"}
        <button type="button" class="link" onClick={() => (trail.value = restored(trail.value, field.address))}>
          restore<span class="sr"> {field.says}</span>
        </button>
      </span>
    );
  }
  if (field.state === "wanted")
    return (
      <span class="src wanted">
        <Icon name="dont-know" size={13} />
        {field.written === "unknown" ? "don't know, never assumed" : "never assumed"}
      </span>
    );
  if (field.state === "unknown")
    return (
      <span class="src dk">
        <Icon name="dont-know" size={13} />
        don't know
      </span>
    );
  if (field.state === "absent") return <span class="src">not written</span>;
  if (field.state === "none") return <Source origin={{ by: "line", says: "" }} written="none" />;
  return (
    <a class="quiet-link" href={workingLink(field.address)}>
      <Source origin={field.origin} written={field.written} />
      <span class="sr">, where {field.says} is from</span>
    </a>
  );
}
