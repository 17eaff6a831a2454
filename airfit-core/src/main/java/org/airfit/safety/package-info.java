/**
 * Cautions, and the rules they rest on.
 *
 * <p>This package lies low, so that every result above it can carry its warnings. It knows quantities only.
 *
 * <p>The cautions of a situation:
 *
 * <pre>{@code
 * import java.util.List;
 * import org.airfit.quantity.GaugePressure;
 * import org.airfit.safety.Caution;
 * import org.airfit.safety.SafetyRules;
 * import org.airfit.safety.Situation;
 *
 * class CautionsOfAGun {
 *   public static void main(String[] args) {
 *     Situation gun = Situation.describe().cleaning(GaugePressure.parse("40 psig")).build();
 *     List<Caution> cautions = SafetyRules.bundled().cautions(gun);
 *     System.out.println(cautions.get(0).title()); // Cleaning pressure (general industry)
 *   }
 * }
 * }</pre>
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
