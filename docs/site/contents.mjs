// What the site holds, in the order in which it is read: parts, and in each its chapters. A file of docs that stands in
// no part is a fault.

/** {title, what, chapters} of each part; a chapter is {source, page} and, where its heading is too long, {title}. */
export const PARTS = [
  {
    title: 'Begin here',
    what: 'What the library answers, how it is asked, and what its words mean.',
    chapters: [
      { source: 'README.md', page: 'start.html', title: 'What airfit is' },
      { source: 'docs/guide.md', page: 'guide.html' },
      { source: 'docs/faq.md', page: 'faq.html' },
      { source: 'docs/glossary.md', page: 'glossary.html' },
    ],
  },
  {
    title: 'Before you trust it',
    what: 'What an answer carries, what it defers to, and where it ends.',
    chapters: [
      { source: 'docs/safety.md', page: 'safety.html' },
      { source: 'docs/limits.md', page: 'limits.html' },
      { source: 'docs/security.md', page: 'security.html' },
      { source: 'docs/versioning.md', page: 'versions.html' },
    ],
  },
  {
    title: 'At work',
    what: 'In programs of your own, on a counter, over a fleet, and with a pencil.',
    chapters: [
      { source: 'docs/embedding.md', page: 'embedding.html' },
      { source: 'docs/counter-page.md', page: 'counter-page.html' },
      { source: 'docs/desk-page.md', page: 'desk-page.html' },
      { source: 'docs/counter-service.md', page: 'counter-service.html' },
      { source: 'docs/interview.md', page: 'interview.html' },
      { source: 'docs/fleet.md', page: 'fleet.html' },
      { source: 'docs/pencil-card.md', page: 'pencil-card.html' },
    ],
  },
  {
    title: 'Files',
    what: 'What is typed in, field by field.',
    chapters: [
      { source: 'docs/job-file.md', page: 'job-file.html' },
      { source: 'docs/reference-set-file.md', page: 'reference-set-file.html' },
      { source: 'docs/network-file.md', page: 'network-file.html' },
      { source: 'docs/day-file.md', page: 'day-file.html' },
      { source: 'docs/diagnosis-file.md', page: 'diagnosis-file.html' },
      { source: 'docs/leak-ledger-file.md', page: 'leak-ledger-file.html' },
      { source: 'docs/inventory-file.md', page: 'inventory-file.html' },
      { source: 'docs/price-list-file.md', page: 'price-list-file.html' },
      { source: 'docs/water-file.md', page: 'water-file.html' },
      { source: 'docs/rules-file.md', page: 'rules-file.html' },
      { source: 'docs/letterhead-file.md', page: 'letterhead-file.html' },
    ],
  },
  {
    title: 'Why believe it',
    what: 'The equations, every number beside the same number from elsewhere, and how often a verdict is right.',
    chapters: [
      { source: 'docs/theory.md', page: 'theory.html', title: 'Theory' },
      { source: 'docs/verification.md', page: 'verification.html' },
      { source: 'docs/sources.md', page: 'sources.html' },
      { source: 'docs/reliability.md', page: 'reliability.html', title: 'Reliability' },
      { source: 'docs/performance.md', page: 'performance.html', title: 'Performance' },
    ],
  },
  {
    title: 'Learn and take part',
    what: 'Thirteen lessons with exercises, and how the library is built.',
    chapters: [
      { source: 'notebooks/README.md', page: 'lessons.html', title: 'The lessons' },
      { source: 'notebooks/TRAINER.md', page: 'trainer.html', title: 'The trainer’s guide' },
      { source: 'DEVELOPERS.md', page: 'contributing.html', title: 'Contributing' },
      { source: 'CHANGELOG.md', page: 'changes.html', title: 'Changes' },
    ],
  },
];

/** Chapters of the verification report stand behind this one, each on a page of its own. */
export const REPORT = { source: 'docs/verification.md', folder: 'docs/verification', pages: 'verification' };

/** Of these only headings are found by a search: what stands below is long, and made of numbers or of the past. */
export const HEADINGS_ONLY = new Set(['CHANGELOG.md']);
