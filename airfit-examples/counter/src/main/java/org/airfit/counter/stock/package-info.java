/**
 * A shop's catalogue and stock in a database: H2 in a folder, or PostgreSQL.
 *
 * <p>{@link org.airfit.counter.stock.Database} opens one and brings its tables up to date; {@link
 * org.airfit.counter.stock.Stock} loads a table of articles, reads them as a catalogue, and reserves pieces; {@link
 * org.airfit.counter.stock.KeptAnswers} keeps answers for a claim. What an
 * article is, is judged by the reader of catalogue files alone: a row is the object of a catalogue file with the same
 * fields.
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>What is changed together stands in one transaction; when a call returns, its change survives the end of the
 *       process.
 *   <li>Prices and costs are exact, with at most four decimals.
 *   <li>A {@code null} argument throws {@link NullPointerException}.
 *   <li>{@code Database} and {@code Stock} may be shared by threads; all other types are immutable.
 * </ul>
 */
@NullMarked
package org.airfit.counter.stock;

import org.jspecify.annotations.NullMarked;
