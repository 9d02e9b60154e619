import type { SqlWords } from '../dialect.ts';
import type { Migration } from './migrate.ts';

/**
 * The stock book of the shelf: why packs came or went, on which day, by whom, and that an entry was taken back. The table was there and
 * nothing ever wrote to it, so it is laid anew.
 */
export const stock: Migration = {
  version: 3,
  name: 'stock',
  statements: ({ text, integer, end }: SqlWords) => [
    'drop table stock_move',
    `create table stock_move (site_id ${text} not null, id ${text} not null, version ${integer} not null, shelf_item_id ${text} not null,
      lot ${text}, expiry ${text}, quantity ${integer} not null,
      reason ${text} not null check (reason in ('received', 'dispensed', 'expired', 'corrected', 'returned')), on_date ${text} not null,
      visit_id ${text}, member_id ${text} not null, note ${text}, taken_back ${text}, primary key (site_id, id),
      foreign key (site_id) references site (site_id), foreign key (site_id, visit_id) references visit (site_id, id),
      foreign key (site_id, member_id) references member (site_id, id),
      check (quantity <> 0), check (reason <> 'received' or quantity > 0),
      check (reason not in ('dispensed', 'expired', 'returned') or quantity < 0), check (visit_id is null or reason = 'dispensed') ${end}`,
    'create index stock_move_by_item on stock_move (site_id, shelf_item_id)',
    'create index stock_move_by_visit on stock_move (site_id, visit_id)',
  ],
};
