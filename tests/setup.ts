import { afterEach, beforeEach, expect, vi } from "vitest";

const LEVELS = ["log", "info", "warn", "error"] as const;

/** Unexpected console output fails a test; one that expects output installs its own spy first. */
beforeEach(() => {
  for (const level of LEVELS) vi.spyOn(console, level).mockImplementation(() => undefined);
});

afterEach(() => {
  for (const level of LEVELS) {
    const spy = vi.mocked(console[level]);
    const calls = spy.mock?.calls ?? [];
    spy.mockRestore?.();
    expect(calls, `console.${level} was called`).toEqual([]);
  }
});
