import type { Child } from "hono/jsx";

interface FoldedFormProps {
  readonly title: string;
  /** The same page with this form open, for a browser that runs no scripts. */
  readonly address: string;
  readonly open: boolean;
  /** Latest day that may be entered, YYYY-MM-DD. */
  readonly today: string;
  readonly children?: Child;
}

/**
 * A form behind its name. While it is folded it stands in a template, which costs a phone nothing: fields for days and
 * hours are the slowest things to make in a page, and a pot has a dozen forms of which one is used.
 */
export function FoldedForm({ title, address, open, today, children }: FoldedFormProps) {
  const form = (
    <details class="log" open>
      <summary>{title}</summary>
      {children}
    </details>
  );
  if (open) return form;
  return (
    <>
      <a class="log log-door" href={address} data-today={today}>
        {title}
      </a>
      <template>{form}</template>
    </>
  );
}
