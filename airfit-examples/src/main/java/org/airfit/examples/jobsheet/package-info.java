/**
 * A program that turns a job file and a catalogue into a job sheet, as text and as one page for the printer.
 *
 * <p>{@code Main} reads and writes; {@code JobFile} and {@code CatalogueFile} know the format (docs/job-file.md); {@code Job} is what was
 * asked and {@code JobSheet} what airfit answers; {@code TextSheet} and {@code PageSheet} show it.
 */
@NullMarked
package org.airfit.examples.jobsheet;

import org.jspecify.annotations.NullMarked;
