// The inputs of a room in groups by thing; a group is drawn when it is opened.
import type { JSX } from "preact";
import { edits } from "../model/desk.ts";
import { capital } from "../model/names.ts";
import { counted } from "../model/numbers.ts";
import type { Field, FieldGroup } from "../worker/fields.ts";
import { FieldRow } from "./field.tsx";
import { Fold } from "./fold.tsx";

/** Groups of a room's own things that are open from the start. */
const openFirst = 3;

export function Fields({ groups, lit }: { groups: readonly FieldGroup[]; lit: string | null }): JSX.Element {
  const own = groups.filter((g) => g.isOwn && g.fields.some((f) => f.state !== "absent"));
  const others = groups.filter((g) => !own.includes(g));
  return (
    <>
      {own.map((g, i) => (
        <Group key={g.key} group={g} lit={lit} isOpen={i < openFirst} />
      ))}
      {others.length === 0 ? null : (
        <Fold
          title="Other things"
          note={counted(others.length, "group")}
          isOpen={others.some((g) => g.fields.some((f) => f.address === lit))}
        >
          {() => others.map((g) => <Group key={g.key} group={g} lit={lit} isOpen={false} />)}
        </Fold>
      )}
    </>
  );
}

function Group({ group, lit, isOpen }: { group: FieldGroup; lit: string | null; isOpen: boolean }): JSX.Element {
  const shown = group.fields.filter((f) => f.state !== "absent" || edits.value.values.has(f.address));
  const absent = group.fields.filter((f) => !shown.includes(f));
  const wanted = shown.filter((f) => f.state === "wanted" && !edits.value.values.has(f.address)).length;
  const typical = shown.filter((f) => f.origin.by === "typical" && f.state === "there").length;
  const note =
    [...(wanted > 0 ? [`${wanted} wanted`] : []), ...(typical > 0 ? [`${typical} typical`] : [])].join(", ") ||
    counted(shown.length, "value");
  const isLit = (f: Field): boolean => f.address === lit;
  return (
    <Fold title={capital(group.title)} note={note} isOpen={isOpen || group.fields.some(isLit)}>
      {() => (
        <>
          {shown.map((f) => (
            <FieldRow key={f.address} field={f} isLit={isLit(f)} />
          ))}
          {absent.length === 0 ? null : (
            <Fold title="" note={`${absent.length} more could be written`} isOpen={absent.some(isLit)}>
              {() => absent.map((f) => <FieldRow key={f.address} field={f} isLit={isLit(f)} />)}
            </Fold>
          )}
        </>
      )}
    </Fold>
  );
}
