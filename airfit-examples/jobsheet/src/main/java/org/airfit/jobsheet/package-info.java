/**
 * The sheets that answer a job, a network or a reference set, as text and as pages, and the program that prints them.
 *
 * <p>{@code JobSheet} and {@code NetworkSheet} are what airfit answers; {@code TextSheet}, {@code PageSheet}, {@code
 * PageReasons}, {@code NetworkText}, {@code NetworkPage} and {@code SetText} show it, in the words of {@code InWords},
 * {@code PageFound} and {@code NetworkWords}. They know no folder and no terminal, so that a web page may show the very same. {@code Main} starts
 * {@code JobProgram}, {@code NetworkProgram} or {@code SetProgram}, which alone read and write files.
 *
 * <p>May use: the library and {@code org.airfit.files}.
 */
@NullMarked
package org.airfit.jobsheet;

import org.jspecify.annotations.NullMarked;
