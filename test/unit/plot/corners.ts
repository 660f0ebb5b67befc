import { all, type XmlElement } from './read-xml.js';

const NUMBER = /-?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/gi;

/** Where each command of a path leads to; relative ones are followed. Fails on what is no command or no number. */
export function cornersOf(d: string): [x: number, y: number][] {
  const corners: [number, number][] = [];
  let [x, y] = [0, 0];
  let start: [number, number] = [0, 0];
  const commands = [...d.matchAll(/([MLHVZmlhvz])([^MLHVZmlhvz]*)/g)];
  if (commands.map(([command]) => command).join('') !== d.trim()) throw new Error(`no path: ${d}`);
  for (const [, command, written] of commands) {
    const numbers = [...written!.matchAll(NUMBER)].map(([one]) => Number(one));
    if (written!.replaceAll(NUMBER, '').replaceAll(/[\s,]/g, '') !== '') throw new Error(`no numbers: ${written}`);
    const letter = command!.toLowerCase();
    const isRelative = letter === command;
    if (letter === 'z') [x, y] = start;
    const size = letter === 'h' || letter === 'v' ? 1 : 2;
    if (letter !== 'z' && (numbers.length === 0 || numbers.length % size !== 0))
      throw new Error(`${command}${written}`);
    for (let i = 0; i < numbers.length; i += size) {
      const [first, second] = [numbers[i]!, numbers[i + 1]!];
      if (letter === 'h') x = isRelative ? x + first : first;
      else if (letter === 'v') y = isRelative ? y + first : first;
      else [x, y] = isRelative ? [x + first, y + second] : [first, second];
      if (letter === 'm' && i === 0) start = [x, y];
      corners.push([x, y]);
    }
  }
  return corners;
}

/** Every point that a picture draws, patterns left aside: corners of paths and boxes, middles of circles, starts of text. */
export function pointsOf(svg: XmlElement): [x: number, y: number][] {
  const inPatterns = new Set(
    all(svg)
      .filter(({ name }) => name === 'pattern')
      .flatMap(all),
  );
  const number = (text: string | undefined): number => (text === undefined ? 0 : Number(text));
  return all(svg)
    .filter((one) => !inPatterns.has(one))
    .flatMap(({ name, attributes }): [number, number][] => {
      if (name === 'path') return cornersOf(attributes.d!);
      if (name === 'circle') return [[number(attributes.cx), number(attributes.cy)]];
      if (name === 'text') return [[number(attributes.x), number(attributes.y)]];
      if (name !== 'rect') return [];
      const [x, y] = [number(attributes.x), number(attributes.y)];
      return [
        [x, y],
        [x + number(attributes.width), y + number(attributes.height)],
      ];
    });
}

/** What lies outside of a picture's view box, or nowhere. */
export function outsideOf(svg: XmlElement): [x: number, y: number][] {
  const [, , width, height] = svg.attributes.viewBox!.split(' ').map(Number) as [number, number, number, number];
  return pointsOf(svg).filter(([x, y]) => !(x >= -0.05 && x <= width + 0.05 && y >= -0.05 && y <= height + 0.05));
}
