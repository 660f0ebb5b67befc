import type { AnsweredView } from '../shell/view.js';

/** Downloads the picture or the numbers as a named file. */
export async function keepAs(form: string, { picture, table }: AnsweredView, name: string): Promise<void> {
  if (form === 'csv' && table) save(`${name}.csv`, new Blob([table()], { type: 'text/csv' }));
  if (form === 'svg' && picture) save(`${name}.svg`, new Blob([picture()], { type: 'image/svg+xml' }));
  if (form === 'png' && picture) save(`${name}.png`, await asPng(picture()));
}

function save(name: string, file: Blob): void {
  const address = URL.createObjectURL(file);
  const link = Object.assign(document.createElement('a'), { href: address, download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** Pixels of the file per pixel of the picture, so that it prints well. */
const FINENESS = 2;

async function asPng(svg: string): Promise<Blob> {
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = image.naturalWidth * FINENESS;
    canvas.height = image.naturalHeight * FINENESS;
    canvas.getContext('2d')!.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await new Promise((done, fail) =>
      canvas.toBlob((blob) => (blob ? done(blob) : fail(new Error('the picture is too large')))),
    );
  } finally {
    URL.revokeObjectURL(address);
  }
}
