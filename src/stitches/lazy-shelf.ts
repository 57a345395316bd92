/** Things by name, each made when it is first asked for: a dictionary of which most blocks use a few. */
export class LazyShelf<T> implements ReadonlyMap<string, T> {
  private readonly made = new Map<string, T>();
  private readonly names: readonly string[];

  constructor(
    names: Iterable<string>,
    private readonly make: (name: string) => T,
  ) {
    this.names = [...new Set(names)];
  }

  get size(): number {
    return this.names.length;
  }

  has(name: string): boolean {
    return this.names.includes(name);
  }

  get(name: string): T | undefined {
    if (!this.made.has(name) && this.has(name)) this.made.set(name, this.make(name));
    return this.made.get(name);
  }

  keys(): MapIterator<string> {
    return this.names[Symbol.iterator]() as MapIterator<string>;
  }

  *values(): MapIterator<T> {
    for (const name of this.names) yield this.get(name)!;
  }

  *entries(): MapIterator<[string, T]> {
    for (const name of this.names) yield [name, this.get(name)!];
  }

  [Symbol.iterator](): MapIterator<[string, T]> {
    return this.entries();
  }

  forEach(each: (value: T, name: string, map: ReadonlyMap<string, T>) => void): void {
    for (const [name, value] of this.entries()) each(value, name, this);
  }
}
