import { type Html, type HtmlPart, html } from '../shell/html.js';

interface FieldLook {
  readonly type?: 'text' | 'date' | 'time';
  readonly hint?: HtmlPart;
  /** Numbers: the keyboard that a phone shows. */
  readonly isNumber?: boolean;
  readonly size?: 'short';
  readonly placeholder?: string;
}

/** A text to type, under its label. */
export const textField = (
  name: string,
  label: string,
  value: string,
  { type = 'text', hint, isNumber = false, size, placeholder }: FieldLook = {},
): Html =>
  html`<label class="field ${size ?? ''}"><span>${label}</span><input type="${type}" name="${name}" value="${value}" autocomplete="off"${isNumber && html` inputmode="decimal"`}${placeholder !== undefined && html` placeholder="${placeholder}"`}>${hint !== undefined && html`<small>${hint}</small>`}</label>`;

export interface Option {
  readonly value: string;
  readonly text: string;
}

export const optionsOf = (pairs: readonly (readonly [value: string, text: string])[]): Option[] =>
  pairs.map(([value, text]) => ({ value, text }));

/** Things that are kept, or known, by their names. */
export const optionsNamed = (all: readonly { readonly id: string; readonly name: string }[]): Option[] =>
  all.map(({ id, name }) => ({ value: id, text: name }));

/** One of several, under its label; what was chosen stays, even where it is none of them now. */
export const selectField = (name: string, label: string, value: string, options: readonly Option[]): Html =>
  html`<label class="field"><span>${label}</span><select name="${name}">${withChosen(options, value).map(
    (option) =>
      html`<option value="${option.value}"${option.value === value && html` selected`}>${option.text}</option>`,
  )}</select></label>`;

const withChosen = (options: readonly Option[], value: string): readonly Option[] =>
  options.some((option) => option.value === value) ? options : [{ value, text: value }, ...options];

/** The degrees that numbers are typed in: kept with them where the form is made anew. */
export const degreesField = (name: string, label: string, value: string): Html =>
  html`<label class="field"><span>${label}</span><select name="${name}" data-goes-with-numbers>${(
    ['C', 'F'] as const
  ).map(
    (unit) => html`<option value="${unit}"${unit === value && html` selected`}>°${unit}</option>`,
  )}</select></label>`;

/** One of several, all to be seen. */
export const radios = (name: string, legend: string, value: string, options: readonly Option[]): Html =>
  html`<fieldset class="radios"><legend>${legend}</legend>${options.map(
    (option) =>
      html`<label><input type="radio" name="${name}" value="${option.value}"${option.value === value && html` checked`}>${option.text}</label>`,
  )}</fieldset>`;

/** What goes along unseen. */
export const hidden = (name: string, value: string): Html =>
  html`<input type="hidden" name="${name}" value="${value}">`;
