import { printLearning } from "./learn/print-learning.ts";
import { printColumnTable } from "./richards/print-table.ts";

// npm run tables -- column            the tank beside a Richards column, some seconds
// npm run tables -- learning          what pots learn, some minutes; then first seed, truths, truths at best
const [which, ...numbers] = process.argv.slice(2);
const [from, count, knownCount] = numbers.map(Number);
if (which !== "learning") printColumnTable();
if (which !== "column")
  printLearning({
    ...(from === undefined ? {} : { from }),
    ...(count === undefined ? {} : { count }),
    ...(knownCount === undefined ? {} : { knownCount }),
  });
