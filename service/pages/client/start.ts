import { countTicked } from "./count-ticked.ts";
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

instantTicks();
countTicked();
smallPhotos();
subscribing();
unfolding();
unfoldAsked();
addEventListener("online", () => void catchUp());
addEventListener("offline", () => void showState());
addEventListener("pageshow", () => {
  freshIds();
  void catchUp();
});
void keepPages();
