import { say } from "./say.ts";

/** Says beside what can be done with the ticked pots how many they are: most of them are out of sight. */
export function countTicked(): void {
  const line = document.getElementById("ticked");
  if (!line) return;
  const tell = () => {
    const count = document.querySelectorAll('input[name="potId"]:checked').length;
    line.textContent = count === 0 ? "" : say("ticked", count);
  };
  document.addEventListener("change", tell);
  addEventListener("pageshow", tell);
}
