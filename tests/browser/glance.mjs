// What the app leaves for the page before the app, as it stands in the storage (src/store/glance_text.rs).
const now = () => Math.floor(Date.now() / 1000);

// Half an hour before a feed, in a text that the app could have left.
export const GLANCE = () => [
  ['glance', '1'],
  ['as-of', 'As of 2 Nov 2026, 20:30'],
  ['name', 'Ember'],
  ['at', now() - 60],
  ['until', now() + 1790],
  ['due', now() + 1790],
  ['level', 'watch', 'Watch'],
  ['answer', 'Bedtime feed at 21:00'],
  ['answer', '60 ml. Nothing to feed before then.'],
  ['known', 'Weight: 1,012 g, today, 06:40'],
  ['aid', 'Feet and body cold.', 'Warm it slowly. Do not feed it until it is warm.'],
  ['call', 'Call the vet', 'Example vet 555 0102', 'tel:5550102'],
  ['call', 'Call the breeder', 'Example breeder +1 555 0100', 'tel:+15550100'],
];

const textOf = (lines) => lines.map((parts) => `${parts.join('\t')}\n`).join('');

// Leaves it in the storage of the page's origin; the page shows it when it is loaded again.
export const leaveGlance = (page, glance) =>
  page.evaluate((text) => localStorage.setItem('perchlight/v1/setting/glance', text), textOf(glance()));

// The lines that stand there with this name, each with its texts.
export const leftBehind = async (page, name) => {
  const text = await page.evaluate(() => localStorage.getItem('perchlight/v1/setting/glance') ?? '');
  const lines = text.split('\n').map((line) => line.split('\t'));
  return lines.filter(([found]) => found === name).map(([, ...texts]) => texts);
};
