import { RequestError } from '../../basics/errors.js';
import { askColumn } from '../columns/ask-column.js';
import { fileChoice, fileQuestion, readingsRefusal } from '../readings-facts.js';
import type { RowsRead } from '../text/rows-read.js';

/** The rows of the block that was asked for; all of them where none was. */
export function pickBlock({ wantedBlock, blocks, stores }: RowsRead): { from: number; to: number } {
  const whole = { from: 0, to: stores[0]!.count };
  if (wantedBlock === null) return whole;
  const at = blocks.findIndex(({ title }) => title.toLowerCase() === wantedBlock.trim().toLowerCase());
  if (at < 0) {
    const titles = blocks
      .map(({ title }) => `"${title}"`)
      .slice(0, 20)
      .join(', ');
    throw new RequestError('not-understood', readingsRefusal('not-understood.no-such-block', { column: wantedBlock }), [
      { parameter: 'column', detail: readingsRefusal('not-understood.no-such-block.field', { blocks: titles }) },
    ]);
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
  throw askColumn(
    'column',
    fileQuestion('choose-column.several-blocks'),
    blocks.map(({ title, line, fromRow }, i) => {
      const rows = (blocks[i + 1]?.fromRow ?? stores[0]!.count) - fromRow;
      return fileChoice(title, 'choose-column.block', { title, rows, line });
    }),
  );
}
