import type { Problem } from "../../../core/problem.ts";

interface SureBoxProps {
  readonly problems: readonly Problem[];
  /** Codes of what is asked rather than refused. */
  readonly asked: ReadonlySet<string>;
  readonly name: string;
  readonly text: string;
}

/** Confirms what is asked about; nothing where nothing is. */
export function SureBox({ problems, asked, name, text }: SureBoxProps) {
  if (!problems.some(({ code }) => asked.has(code))) return null;
  return (
    <label class="choice">
      <input type="checkbox" name={name} value="yes" />
      <span>{text}</span>
    </label>
  );
}
