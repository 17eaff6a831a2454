/**
 * Cautions, and the rules they rest on.
 *
 * <p>This package lies low, so that every result above it can carry its warnings. It knows quantities only.
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>Rules are data: {@link org.airfit.safety.SafetyRules} reads them from tables, the bundled ones and a user's own
 *       alike. US federal law is what is judged unless told otherwise; other places have other rules.
 *   <li>A caution names its rule. Where two rules differ, both are shown; airfit does not choose between them.
 *   <li>Everything here defers to local codes, the makers' ratings and licensed practice.
 *   <li>Everything is immutable and thread-safe. A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 */
@NullMarked
package org.airfit.safety;

import org.jspecify.annotations.NullMarked;
