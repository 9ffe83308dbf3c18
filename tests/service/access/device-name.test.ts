import { expect, it } from "vitest";
import { deviceName } from "../../../service/access/device-name.ts";

// Shapes as browsers send them; RFC 9110, 10.1.5 leaves the text to them.
it.each([
  ["Mozilla/5.0 (X11; Linux x86_64; rv:140.0) Gecko/20100101 Firefox/140.0", "Firefox, Linux"],
  [
    "Mozilla/5.0 (Linux; Android 15) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/150.0.0.0 Mobile Safari/537.36",
    "Chrome, Android",
  ],
  [
    "Mozilla/5.0 (iPhone; CPU iPhone OS 19_0 like Mac OS X) AppleWebKit/605.1.15 Version/19.0 Mobile Safari/604.1",
    "Safari, iPhone",
  ],
  ["a script", "a script"],
  ["", "?"],
])("%.40s is called %s", (userAgent, name) => {
  expect(deviceName(userAgent)).toBe(name);
});
