/** As the server keeps them; what is larger only costs signal. */
const LONGEST_SIDE_PX = 1600;
const QUALITY = 0.82;

/**
 * Makes a chosen photo small on the device, before it goes out on a weak signal; redrawn, it holds nothing that the
 * phone wrote into it. Where a browser cannot, the photo goes as it is.
 */
export function smallPhotos(): void {
  document.addEventListener("change", (event) => {
    const input = event.target;
    if (input instanceof HTMLInputElement && input.type === "file" && input.files?.[0])
      void shrink(input, input.files[0]).catch(() => undefined);
  });
}

async function shrink(input: HTMLInputElement, file: File): Promise<void> {
  const picture = await createImageBitmap(file, { imageOrientation: "from-image" });
  const scale = Math.min(1, LONGEST_SIDE_PX / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(picture.width * scale);
  canvas.height = Math.round(picture.height * scale);
  canvas.getContext("2d")?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise<Blob | null>((ready) => canvas.toBlob(ready, "image/jpeg", QUALITY));
  if (!blob || blob.size >= file.size || input.files?.[0] !== file) return;
  const chosen = new DataTransfer();
  chosen.items.add(new File([blob], "photo.jpg", { type: "image/jpeg" }));
  input.files = chosen.files;
}
