import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { csvRows, csvText } from "../../../service/csv.ts";
import { potsCsv, potsFromCsv } from "../../../service/store/pots-csv.ts";
import { pot } from "./bench.ts";

describe("comma-separated values", () => {
  // RFC 4180, section 2, rules 1, 2, 5, 6 and 7: the examples given there.
  const CASES: readonly (readonly [string, string[][]])[] = [
    [
      "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n",
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      "aaa,bbb,ccc\r\nzzz,yyy,xxx",
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ["aaa", "b\r\nbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    ['"aaa","b""bb","ccc"', [["aaa", 'b"bb', "ccc"]]],
  ];

  it("are read as RFC 4180 has them", () => {
    expect(CASES).toHaveLength(5);
    for (const [text, rows] of CASES) expect(csvRows(text)).toEqual(rows);
  });

  it("come back as they were written", () => {
    const rows = fc.array(fc.array(fc.string({ unit: "grapheme" }), { minLength: 2, maxLength: 5 }), {
      maxLength: 6,
    });
    fc.assert(
      fc.property(rows, (given) => {
        expect(csvRows(csvText(given))).toEqual(given);
      }),
    );
  });

  it("end for any text", () => {
    const nasty = fc.string({ unit: fc.constantFrom('"', ",", "\r", "\n", "'", "=", "a") });
    fc.assert(
      fc.property(nasty, (text) => {
        expect(csvRows(text).every((row) => row.length > 0)).toBe(true);
      }),
    );
  });

  it("hold nothing that a spreadsheet would run as a formula", () => {
    for (const start of ["=", "+", "-", "@", "\t", "\r"]) {
      const cell = csvText([[`${start}1+1`, "x"]]).replace(/^"/, "");
      expect(cell.startsWith("'")).toBe(true);
    }
  });
});

describe("pots as a table", () => {
  it("come back as they went out, formula-like names included", () => {
    const pots = [
      pot(),
      pot({ id: "p2", name: '=HYPERLINK("x")', count: 3 }),
      pot({ id: "p3", name: 'O\'Hara, "red"' }),
    ];
    expect(potsFromCsv(potsCsv(pots))).toEqual({ ok: true, value: pots });
  });

  it("with faults are refused with every one of them", () => {
    const text =
      "id,name,groupId,canopyWidthCm,plantHeightCm,firstSpotId\r\na,A,citrus,wide,10,s\r\nb,,citrus,5,-1,s\r\n";
    const read = potsFromCsv(text);
    expect(read.ok ? [] : read.problems.map(({ code, path }) => `${path.join(".")} ${code}`)).toEqual([
      "0.canopyWidthCm wrong-type",
      "1.name missing",
      "1.plantHeightCm too-small",
    ]);
  });

  it("lacking a column are refused by its name", () => {
    const read = potsFromCsv("id,name\r\na,A\r\n");
    expect(read.ok ? [] : read.problems.map(({ path }) => path.join("."))).toEqual([
      "groupId",
      "canopyWidthCm",
      "plantHeightCm",
      "firstSpotId",
    ]);
  });
});
