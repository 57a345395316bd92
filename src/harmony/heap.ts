/** Numbers of which the greatest comes out first. */
export class Heap {
  private readonly keys: number[] = [];

  push(key: number): void {
    const { keys } = this;
    let at = keys.length;
    while (at > 0 && keys[(at - 1) >> 1] < key) {
      keys[at] = keys[(at - 1) >> 1];
      at = (at - 1) >> 1;
    }
    keys[at] = key;
  }

  /** The greatest number, taken out; undefined when none is left. */
  pop(): number | undefined {
    const { keys } = this;
    const top = keys[0];
    const last = keys.pop();
    if (last === undefined || keys.length === 0) return top;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= keys.length) break;
      if (child + 1 < keys.length && keys[child + 1] > keys[child]) child++;
      if (keys[child] <= last) break;
      keys[at] = keys[child];
      at = child;
    }
    keys[at] = last;
    return top;
  }
}
