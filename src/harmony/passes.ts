/** Default weight: three passes of No. 40 are about as heavy as pearl No. 5. Common practice. */
export const DEFAULT_PASSES = 3;
