import type { Child } from "hono/jsx";

/** A page that has one thing to say and one thing to do next. */
export function PlainMessage({ title, text, children }: { title: string; text: string; children?: Child }) {
  return (
    <div class="message">
      <h1>{title}</h1>
      <p>{text}</p>
      {children}
    </div>
  );
}
