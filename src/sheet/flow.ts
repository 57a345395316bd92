import type { Page } from './page.js';
import type { Size } from './page-sizes.js';
import type { Paper } from './paper.js';

/** What home printers leave blank, and room for a pin, mm. */
export const MARGIN = 14;

/** Content that runs down a page and on over the next ones. */
export class Flow {
  page: Page;
  /** where the next thing begins, mm from the upper edge */
  y = MARGIN;

  /** @param later size of all pages but the first */
  constructor(
    readonly paper: Paper,
    first: Size,
    private readonly later: Size = first,
  ) {
    this.page = paper.addPage(first);
  }

  get width(): number {
    return this.page.size.width - 2 * MARGIN;
  }

  /** Height that is left on this page. */
  get room(): number {
    return this.page.size.height - MARGIN - this.y;
  }

  /** Room of so much height, on the next page where this one has not as much; tells where it begins. */
  take(height: number): number {
    if (height > this.room && this.y > MARGIN) this.nextPage();
    const top = this.y;
    this.y += height;
    return top;
  }

  nextPage(): void {
    this.page = this.paper.addPage(this.later);
    this.y = MARGIN;
  }
}
