/**
 * The figures of the lessons that follow their numbers, and the exercises that check themselves, inside a page.
 *
 * <p>A figure shows in a page what some cells of a notebook show, with other numbers. With the numbers of the lesson it
 * shows the same to the last letter: a test compares it with what the notebooks hold.
 */
@NullMarked
package org.airfit.browser.lessons;

import org.jspecify.annotations.NullMarked;
