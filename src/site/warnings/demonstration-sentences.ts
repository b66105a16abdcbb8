/**
 * What the demonstration says of its publisher, money and bench, sentence by sentence. Whoever starts from it and leaves
 * one of them standing would publish another's words for their own. A test holds the list against the demonstration;
 * sentences that it no longer has stay here, since guides may have been started from them.
 */
export const DEMONSTRATION_SENTENCES: ReadonlySet<string> = new Set([
  'The Curlew Strand panel ledger',
  'Red and near-infrared panels, read on one bench before they are lent out',
  'Curlew Strand Library of Things',
  'https://panels.curlewstrand.example',
  'The Curlew Strand Library of Things lends tools, tents and, since 2025, light-therapy panels to the people of a small coastal town.',
  'Before a panel goes on the shelf it goes on our bench: the same distance, the same meters, the same sheet.',
  'This guide shows every reading, what we calculated from it and how sure we are.',
  'It says nothing about what light does for anyone.',
  'The town, the makers, the panels and the meters are invented, and the readings come from a simulated bench: this is the demonstration that comes with the software.',
  'Replace it with your own.',
  'The library is paid for by membership fees and the town council.',
  "We buy panels at the price that anyone pays, unless a panel's page says that it was lent or given; makers see no page before it is published.",
  'We buy panels at the price that anyone pays, unless a panel’s page says that it was lent or given; makers see no page before it is published.',
  'One shop code, for the Kelpwright Limpet, earns us 4 % of the sale, which goes into the repair fund; its link is marked as a paid link where it stands.',
  'Nothing else on these pages earns us anything.',
  'Library fees and the town council.',
  'One shop code, for the Kelpwright Limpet, earns us 4 %.',
  "Invented for the demonstration; put in your central bank's reference rate of the day.",
  'Invented for the demonstration; put in your central bank’s reference rate of the day.',
  'The one R30 that we had was a sample that was never sold; its readings say nothing about what is in the shops.',
  'Household tariff of Curlew Strand Energy Co-operative (invented)',
]);

/** The demonstration's address, and its makers: a guide that has these alone is the demonstration itself. */
export const DEMONSTRATION_SITE = 'https://panels.curlewstrand.example';
export const DEMONSTRATION_MAKERS: ReadonlySet<string> = new Set([
  'fennimarsh',
  'kelpwright',
  'ostrel',
  'quennick',
  'ruddlestone',
]);
