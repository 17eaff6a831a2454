/**
 * Every question by name, with plain values in and out: maps, lists, texts, numbers and truth values. The counter page
 * asks them in a browser and the counter service over HTTP, and both get the same answers.
 *
 * <p>May use: the library, the files and the sheets; nothing that a browser lacks.
 */
@NullMarked
package org.airfit.calls;

import org.jspecify.annotations.NullMarked;
