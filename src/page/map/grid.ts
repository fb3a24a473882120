/** Boxes found by place: who asks whether there is room looks only at those near by. */

export type Room = readonly [west: number, north: number, east: number, south: number];

export const clash = (a: Room, b: Room): boolean => a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];

/** From one rim of a cell to the other, pixels. */
const CELL = 48;

export class Grid {
  private readonly cells: (Room[] | undefined)[] = [];
  private readonly columns: number;
  private readonly rows: number;

  /** Over a ground so wide and high, pixels; what lies beside it counts to its rim. */
  constructor(wide: number, high: number) {
    this.columns = Math.max(1, Math.ceil(wide / CELL));
    this.rows = Math.max(1, Math.ceil(high / CELL));
  }

  add(room: Room): void {
    this.each(room, (cell) => {
      const known = this.cells[cell];
      if (known) known.push(room);
      else this.cells[cell] = [room];
      return false;
    });
  }

  /** Whether a box lies on one of those that are there. */
  hits(room: Room): boolean {
    return this.each(room, (cell) => this.cells[cell]?.some((other) => clash(room, other)) ?? false);
  }

  /** Visits the cells of a box until one of them says that it is enough. */
  private each([west, north, east, south]: Room, visit: (cell: number) => boolean): boolean {
    const [left, right] = [within(west, this.columns), within(east, this.columns)];
    const [top, foot] = [within(north, this.rows), within(south, this.rows)];
    for (let row = top; row <= foot; row++) {
      for (let column = left; column <= right; column++) if (visit(row * this.columns + column)) return true;
    }
    return false;
  }
}

const within = (at: number, count: number): number => Math.min(count - 1, Math.max(0, Math.floor(at / CELL)));
