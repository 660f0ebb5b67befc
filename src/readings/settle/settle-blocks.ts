import { type Choice, RequestError } from '../../basics/errors.js';
import type { RowsRead } from '../text/rows-read.js';

/** The rows of the block that was asked for; all of them where none was. */
export function pickBlock({ wantedBlock, blocks, stores }: RowsRead): { from: number; to: number } {
  const whole = { from: 0, to: stores[0]!.count };
  if (wantedBlock === null) return whole;
  const at = blocks.findIndex(({ title }) => title.toLowerCase() === wantedBlock.trim().toLowerCase());
  if (at < 0) {
    throw new RequestError(
      'not-understood',
      `There is no column or block of rows called "${wantedBlock}" in the file.`,
      [
        {
          parameter: 'column',
          detail: `Name one of ${blocks
            .map(({ title }) => `"${title}"`)
            .slice(0, 20)
            .join(', ')}, or a column.`,
        },
      ],
    );
  }
  return { from: blocks[at]!.fromRow, to: blocks[at + 1]?.fromRow ?? whole.to };
}

/** Blocks of rows that run over the same time are of several probes: which one is asked. */
export function refuseOverlappingBlocks({ wantedBlock, blocks, stores }: RowsRead): void {
  if (wantedBlock !== null || blocks.length < 2) return;
  const stamps = stores[0]!.stamps();
  const overlap = blocks.some(
    ({ fromRow }, i) => i > 0 && fromRow > 0 && fromRow < stores[0]!.count && stamps[fromRow]! <= stamps[fromRow - 1]!,
  );
  if (!overlap) return;
  const detail = 'The file holds several blocks of rows over the same time, each under a title of its own.';
  throw new RequestError('choose-column', `${detail} Say which with column.`, [
    {
      parameter: 'column',
      detail,
      choices: blocks.map(
        ({ title, line, fromRow }, i): Choice => ({
          value: title,
          reads: title,
          consequence: `the ${(blocks[i + 1]?.fromRow ?? stores[0]!.count) - fromRow} rows from line ${line} on are used`,
        }),
      ),
    },
  ]);
}
