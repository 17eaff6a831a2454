/**
 * Cautions, and the rules they rest on.
 *
 * <p>This package lies low, so that every result above it can carry its warnings. It knows quantities only.
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>A caution names its rule. Where two rules differ, both are shown; airfit does not choose between jurisdictions.
 *   <li>Everything here defers to local codes, the makers' ratings and licensed practice.
 *   <li>Everything is immutable and thread-safe. A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 */
@NullMarked
package org.airfit.safety;

import org.jspecify.annotations.NullMarked;
