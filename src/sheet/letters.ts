/**
 * Letters that are no letter with a mark, which the normal forms of Unicode would take apart, and signs that are as good in
 * plain writing.
 */
const PLAIN: Readonly<Record<string, string>> = {
  ...{ ł: 'l', đ: 'd', ı: 'i', ħ: 'h', ŧ: 't', ŋ: 'ng', ĸ: 'k', ə: 'e', ẞ: 'ss' },
  ...{ '№': 'No.', '−': '-', '‐': '-', '‑': '-', '′': "'", '″': '"', '→': '->', '⁄': '/', '☓': 'x' },
};

/** Cyrillic as passports spell it (ICAO Doc 9303 part 3, table for Cyrillic: from memory), Serbian letters as in Latin Serbian. */
const CYRILLIC: Readonly<Record<string, string>> = {
  ...{
    а: 'a',
    б: 'b',
    в: 'v',
    г: 'g',
    д: 'd',
    е: 'e',
    ё: 'e',
    ж: 'zh',
    з: 'z',
    и: 'i',
    й: 'i',
    к: 'k',
    л: 'l',
  },
  ...{
    м: 'm',
    н: 'n',
    о: 'o',
    п: 'p',
    р: 'r',
    с: 's',
    т: 't',
    у: 'u',
    ф: 'f',
    х: 'kh',
    ц: 'ts',
    ч: 'ch',
    ш: 'sh',
  },
  ...{
    щ: 'shch',
    ъ: 'ie',
    ы: 'y',
    ь: "'",
    э: 'e',
    ю: 'iu',
    я: 'ia',
    і: 'i',
    ї: 'i',
    є: 'ie',
    ґ: 'g',
    ў: 'u',
  },
  ...{ ђ: 'dj', ј: 'j', љ: 'lj', њ: 'nj', ћ: 'c', џ: 'dz', ѓ: 'g', ќ: 'k', ѕ: 'dz' },
};

/** Greek letter by letter (ELOT 743, ISO 843 type 2: from memory). */
const GREEK: Readonly<Record<string, string>> = {
  ...{
    α: 'a',
    β: 'v',
    γ: 'g',
    δ: 'd',
    ε: 'e',
    ζ: 'z',
    η: 'i',
    θ: 'th',
    ι: 'i',
    κ: 'k',
    λ: 'l',
    μ: 'm',
    ν: 'n',
  },
  ...{ ξ: 'x', ο: 'o', π: 'p', ρ: 'r', σ: 's', ς: 's', τ: 't', υ: 'y', φ: 'f', χ: 'ch', ψ: 'ps', ω: 'o' },
};

const SPELLED: ReadonlyMap<string, string> = new Map(Object.entries({ ...PLAIN, ...CYRILLIC, ...GREEK }));

/**
 * Text in letters that a face has: other Latin ones without their marks, Cyrillic and Greek spelled in Latin letters,
 * whatever else by its number, such as [U+7D05]. Nothing that can be seen is left out.
 *
 * @param known code points of the face
 */
export function spelled(text: string, known: ReadonlySet<number>): string {
  const has = (letters: string) => [...letters].every((one) => known.has(one.codePointAt(0)!));
  let out = '';
  for (const letter of text.normalize('NFC')) {
    if (has(letter)) out += letter;
    else if (/\s/.test(letter)) out += ' ';
    else out += substitutes(letter).find(has) ?? byNumber(letter);
  }
  return out;
}

/** What may stand for a letter, the best first. */
function substitutes(letter: string): string[] {
  const bare = letter.normalize('NFKD').replace(/\p{M}/gu, '');
  return [letter, bare].flatMap((one) => {
    const small = SPELLED.get(one.toLowerCase());
    if (small === undefined) return one === '' ? [] : [one];
    return [one === one.toLowerCase() ? small : small.charAt(0).toUpperCase() + small.slice(1)];
  });
}

/** Unseen characters and lone marks have no place of their own. */
const byNumber = (letter: string): string =>
  /[\p{Cc}\p{Cf}\p{Cs}\p{M}]/u.test(letter)
    ? ''
    : `[U+${letter.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}]`;
