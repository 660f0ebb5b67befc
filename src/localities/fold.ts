/** Marks of Latin, Greek and Cyrillic letters, and the points of Hebrew and Arabic, which readers write or leave out. */
const MARKS = /[\u0300-\u036f\u0591-\u05c7\u0610-\u061a\u0640\u064b-\u065f\u0670]/g;
const APOSTROPHES = /['`´‘’ʹʻʼʽʾʿ＇]/g;
const NO_WORD = /[^\p{L}\p{N}\p{M}]+/gu;

/** Letters that Unicode does not take apart into a letter and a mark. */
const PLAIN_LETTERS: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  ł: 'l',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ħ: 'h',
  ŧ: 't',
  ŋ: 'n',
  ı: 'i',
  ə: 'e',
  ς: 'σ',
};
const PLAINER = new RegExp(`[${Object.keys(PLAIN_LETTERS).join('')}]`, 'g');

const SHORT_WORDS: Readonly<Record<string, string>> = {
  saint: 'st',
  sankt: 'st',
  sainte: 'ste',
  mount: 'mt',
  fort: 'ft',
};

/**
 * The words of a name without case, accents and punctuation: `São Paulo` is `sao paulo`, `Saint-Étienne`
 * `st etienne`. Folding twice changes nothing more.
 */
export const fold = (text: string): string => words(text).map(shortened).join(' ');

/** The words of a name, folded but for Saint, Mount and Fort, which are often shortened. */
export const words = (text: string): string[] => {
  const plain = text
    .normalize('NFKD')
    .toLowerCase()
    .normalize('NFKD')
    .replace(APOSTROPHES, '')
    .replace(MARKS, '')
    .replace(PLAINER, (letter) => PLAIN_LETTERS[letter]!);
  return plain
    .split(NO_WORD)
    .filter((word) => word !== '')
    .map((word) => word.normalize('NFC'));
};

export const shortened = (word: string): string => SHORT_WORDS[word] ?? word;

/** A name as the table of names has it: folded, and its words joined, so that `Stratford-upon-Avon` needs no hyphens. */
export const keyOf = (name: string): string => words(name).map(shortened).join('');
