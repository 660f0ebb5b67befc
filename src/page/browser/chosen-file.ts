import type { FileGiven } from '../view.js';

let chosen: FileGiven | null = null;

/** The thermometer's file as it was chosen, dropped or pasted last. */
export const chosenFile = async (): Promise<FileGiven | null> => chosen;

/** Takes the file that is chosen in the form, or what is pasted into it. */
export function watchFile(form: HTMLFormElement, changed: () => void): void {
  form.addEventListener('change', ({ target }) => {
    if (target instanceof HTMLInputElement && target.type === 'file' && target.files?.[0]) {
      chosen = { name: target.files[0].name, body: target.files[0] };
      changed();
    }
  });
  form.addEventListener('input', ({ target }) => {
    if (target instanceof HTMLTextAreaElement && target.name === 'pasted') {
      chosen = target.value.trim() === '' ? null : { name: 'what you pasted', body: new Blob([target.value]) };
    }
  });
}
