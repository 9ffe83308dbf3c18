/** Whether a text is a well-formed locale, e.g. "es-MX". */
export function isLocale(text: string): boolean {
  try {
    return Intl.getCanonicalLocales(text).length === 1;
  } catch {
    return false;
  }
}
