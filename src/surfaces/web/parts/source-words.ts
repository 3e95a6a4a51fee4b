// The mark and the word for where a value is from.
import type { OriginAnswer } from "../../../kernel/answer.ts";
import type { IconName } from "../../../pictures/icons.ts";

/** How a value is known, as the long form of the files says it, with the mark for it. */
const known: Readonly<Record<string, IconName>> = {
  plate: "plate",
  papers: "documents",
  seller: "documents",
  drawing: "drawing",
  seen: "seen",
  measured: "measured",
  estimate: "typical",
  "local-code": "local-code",
};

export function sourceWords(origin: OriginAnswer, written: string | null): { readonly icon: IconName; readonly word: string } {
  switch (origin.by) {
    case "option":
      return origin.name === "tried" ? { icon: "typed", word: "typed, not kept" } : { icon: "option", word: `option ${origin.name ?? ""}` };
    case "record":
      return { icon: "measured", word: "record" };
    case "catalogue":
      return { icon: "catalogue", word: "catalogue" };
    case "estimate":
      return { icon: written === "unknown" ? "dont-know" : "typical", word: written === "unknown" ? "don't know" : "estimated" };
    case "typical":
      return written === "unknown"
        ? { icon: "dont-know", word: "don't know" }
        : { icon: "typical", word: origin.unchecked ? "typical, unchecked" : "typical" };
    case "given":
    case "line": {
      const [how = ""] = origin.says.split(", ");
      const icon = known[how];
      return icon ? { icon, word: how.replace("-", " ") } : { icon: "typed", word: origin.by === "given" ? "given" : "file" };
    }
  }
}
