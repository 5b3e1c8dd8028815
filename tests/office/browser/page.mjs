// The page as a person sees it, in a browser: node page.mjs ADDRESS CODE PICTURES
import { chromium } from "playwright-core";

const [address, code, pictures] = process.argv.slice(2);
const faults = [];
const phone = { width: 412, height: 915 };
const desk = { width: 1280, height: 800 };
const expect = (condition, what) => {
  if (!condition) faults.push(what);
};

const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox", "--disable-gpu"] });
const context = await browser.newContext({ viewport: phone });
const page = await context.newPage();
page.on("dialog", (dialog) => {
  faults.push(`a dialog: ${dialog.message()}`);
  dialog.dismiss();
});
page.on("console", (message) => {
  if (message.type() === "error" && !message.text().includes("401")) faults.push(`the browser complains: ${message.text()}`);
});

// On a phone and on a desk; the picture of each is kept for who wants to look.
const fitsBoth = async (where) => {
  for (const [name, size] of Object.entries({ desk, phone })) {
    await page.setViewportSize(size);
    const width = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(width <= size.width, `${where}: ${width} px wide on a ${name} of ${size.width}`);
    await page.screenshot({ path: `${pictures}/${where}_${name}.png` });
  }
};

const first = await page.goto(address);
expect(first.headers()["content-security-policy"].startsWith("default-src 'none'"), "no content security policy");
expect((await page.title()).startsWith("Log in"), "the door is open");
await page.fill("#code", "wrong");
await page.click("button");
expect((await page.textContent("main")).includes("does not work"), "a wrong code is told");
await fitsBoth("login");
await page.fill("#code", code);
await page.click("button");
expect((await page.title()).startsWith("Visits"), "the code lets in");
await fitsBoth("visits");

const cookies = await context.cookies();
expect(cookies.length === 1 && cookies[0].httpOnly && cookies[0].sameSite === "Strict", "the cookie is not guarded");

const text = await page.textContent("main");
expect(text.includes("1 photo on the way"), "a visit that waits for photos says so");
expect(text.includes("2 states, not merged"), "a fork is told");
await page.click("a.card:has-text('Quillwater')");
await fitsBoth("visit");
await page.click("a.card");
const revision = await page.textContent("main");
for (const wanted of ["Advice", "Readings", "Freezer sliding door", "Does not fit", "Rolling loads can tip", "20\u00a0mm", "Tray rack", "as supplied"])
  expect(revision.includes(wanted), `the revision does not show '${wanted}'`);
const picture = page.locator(".photos img").first();
await picture.scrollIntoViewIfNeeded();
await picture.evaluate((image) => image.complete || new Promise((done) => (image.onload = image.onerror = done)));
expect(await picture.evaluate((image) => image.naturalWidth > 0), "the photo is not shown");
await page.evaluate(() => window.scrollTo(0, 0));
await fitsBoth("revision");
const [download] = await Promise.all([page.waitForEvent("download"), page.click("a.button:has-text('Download')")]);
expect(download.suggestedFilename().endsWith(".json"), "the revision downloads as JSON");

await page.goto(`${address}/`);
await page.click("a.card:has-text('<script>')");
await page.click("a.card >> nth=0");
const hostile = await page.textContent("main");
expect(hostile.includes("<script>alert(1)</script>"), "markup in a note is shown as text");
expect((await page.locator("main script, main iframe, main img[onerror]").count()) === 0, "markup in a note became markup");

await page.click("header button");
expect((await page.title()).startsWith("Log in"), "logging out closes the door");
expect((await page.goto(`${address}/visit/018f3c1a-0000-7000-8000-000000000005`)).status() === 401, "open after logging out");
await browser.close();
console.log(faults.join("\n") || "the page is as it should be");
process.exit(faults.length === 0 ? 0 : 1);
