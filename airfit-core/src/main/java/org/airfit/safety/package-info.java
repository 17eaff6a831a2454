/**
 * Cautions, and the rules they rest on.
 *
 * <p>This floor lies low in the house so that every result above can carry its warnings with it. It knows quantities only.
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
