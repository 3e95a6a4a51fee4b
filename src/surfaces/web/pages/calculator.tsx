// Calculator.
import type { JSX } from "preact";
import { Page } from "../shell/page.tsx";

export function CalculatorPage(): JSX.Element {
  return (
    <Page crumb="" title="Calculator">
      {null}
    </Page>
  );
}
