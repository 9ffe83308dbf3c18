import { freshIds } from "./fresh-ids.ts";
import { idle } from "./idle.ts";
import { keepPages } from "./keep-pages.ts";
import { smallPhotos } from "./small-photos.ts";
import { showState } from "./state-line.ts";
import { subscribing } from "./subscribing.ts";
import { instantTicks } from "./ticks.ts";
import { unfoldAsked, unfolding } from "./unfold.ts";
import { sendWaiting } from "./waiting.ts";

/** Everything works without this; with it ticks are instant and entries survive a walk without signal. */
async function catchUp(): Promise<void> {
  await idle();
  await sendWaiting().catch(() => 0);
  await showState();
}

/** The script comes as soon as it is there, in a turn of its own, and may be there before the page is. */
function whenParsed(then: () => void): void {
  if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", then);
  else then();
}

instantTicks();
smallPhotos();
unfolding();
whenParsed(() => {
  subscribing();
  unfoldAsked();
});
addEventListener("online", () => void catchUp());
addEventListener("offline", () => void showState());
addEventListener("pageshow", () => {
  freshIds();
  void catchUp();
});
void keepPages();
