// What must be known wherever one is: the server out of reach, a mistake of the program.
import type { JSX } from "preact";
import { trouble } from "../model/desk.ts";
import { isCutOff } from "../model/keep.ts";

export function Notes(): JSX.Element {
  const notes = [
    ...(isCutOff.value
      ? ["The program that serves this page is out of reach: nothing can be kept until it runs again. What you typed stays here."]
      : []),
    ...(trouble.value === null ? [] : [`The program made a mistake: ${trouble.value} What is shown is the last good answer.`]),
  ];
  return (
    <div class="notes" role="status">
      {notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
    </div>
  );
}
