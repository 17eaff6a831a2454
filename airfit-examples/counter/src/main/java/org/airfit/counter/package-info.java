/**
 * The counter service: what a page or a till asks over HTTP, answered over a shop's stock.
 *
 * <p>{@link org.airfit.counter.CounterService} starts and stops it; {@link org.airfit.counter.Main} is the program.
 * What is computed is computed by the calls of the page; here stand the ways to them and the guard in front.
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>Every answer but the page and the metrics is JSON; what cannot be answered is an {@code
 *       application/problem+json}. openapi.json has all of them.
 *   <li>The service keeps nothing of what it is asked.
 *   <li>A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 */
@NullMarked
package org.airfit.counter;

import org.jspecify.annotations.NullMarked;
