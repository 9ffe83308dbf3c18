import { BASE } from "./base.ts";
import { say } from "./say.ts";
import { allWaiting } from "./waiting.ts";

/** Answered by the server alone, never from the device's own store. */
const ANY_ANSWER = `${BASE}healthz`;

/** Says below the head whether entries wait on this device, and how old the page is where there is no signal. */
export async function showState(): Promise<void> {
  const line = document.getElementById("state");
  if (!line) return;
  const count = (await allWaiting().catch(() => [])).length;
  const parts = [
    ...((await hasSignal()) ? [] : [say("kept")]),
    ...(count > 0 ? [say("waiting", count)] : []),
  ];
  line.textContent = parts.join(" ");
  line.hidden = parts.length === 0;
}

async function hasSignal(): Promise<boolean> {
  const answer = await fetch(ANY_ANSWER, { cache: "no-store" }).catch(() => null);
  return answer !== null;
}
