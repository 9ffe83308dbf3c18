/** Sentences for the script, as the server put them into the page; a number takes the place of "#". */
export function say(name: string, count?: number): string {
  const sentences = document.getElementById("says")?.dataset ?? {};
  const sentence = (count === 1 ? sentences[`${name}One`] : undefined) ?? sentences[name] ?? "";
  return count === undefined ? sentence : sentence.replace("#", count.toLocaleString(sentences.locale));
}
