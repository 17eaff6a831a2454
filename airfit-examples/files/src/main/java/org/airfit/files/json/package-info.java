/**
 * airfit's values and answers as JSON, by a module for Jackson 2.
 *
 * <p>{@link org.airfit.files.json.AirfitModule} teaches a mapper every public value and answer of airfit; begin there.
 * Files of jobs, catalogues, reference sets and networks are not read here, but by {@link org.airfit.files.Disk}.
 *
 * <p>A value out of JSON and back, and an answer as JSON:
 *
 * <pre>{@code
 * import com.fasterxml.jackson.core.JsonProcessingException;
 * import com.fasterxml.jackson.databind.json.JsonMapper;
 * import org.airfit.files.json.AirfitModule;
 * import org.airfit.flow.Orifice;
 * import org.airfit.quantity.GaugePressure;
 * import org.airfit.quantity.Length;
 *
 * class ValueAsJson {
 *   public static void main(String[] args) throws JsonProcessingException {
 *     JsonMapper json = AirfitModule.strictMapper();
 *     GaugePressure pressure = json.readValue("\"90 psi(g)\"", GaugePressure.class);
 *     System.out.println(json.writeValueAsString(pressure)); // "90 psig"
 *     System.out.println(json.valueToTree(Orifice.rounded(Length.parse("3 mm"))));
 *     // {"diameter":"3 mm","dischargeCoefficient":0.97}
 *   }
 * }
 * }</pre>
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>What people type is a text, as they type it: {@code "90 psi(g)"}, {@code "0.25 in"}, {@code "1/4 NPT male"}. A
 *       quantity is written in the unit in which it has the fewest digits, and so as it was typed in most cases; every
 *       text that is written is read as the very same value, to the last bit.
 *   <li>Anything else is an object. Its fields are what the type tells, by the names of its methods: {@code price()} is
 *       {@code price}, {@code isExisting()} is {@code existing}, {@code verdict()} is {@code kind}, {@code inWords()}
 *       is {@code sentence}. What is empty is left out.
 *   <li>A value that is one of several types says which in {@code kind}. The kinds are listed in {@code Kinds}, not
 *       taken from names of classes.
 *   <li>Values that are given to airfit are read too. Answers are computed by airfit; nobody can hand one in.
 *   <li>Workings are written only by {@link org.airfit.files.json.AirfitModule#withWorkings()}.
 *   <li>What is wrong with a text is a {@link org.airfit.files.json.WrongJsonException} with the field, the value and
 *       what is accepted. A field that is not known, is missing or stands twice is wrong.
 *   <li>A {@code null} argument throws {@link NullPointerException}; all types are immutable and may be shared by
 *       threads, but for the module, which belongs to the mapper that it is registered with.
 * </ul>
 *
 * <p>May use: the library, the files, Jackson and reflection. Nothing that a web page uses may use this package.
 */
@NullMarked
package org.airfit.files.json;

import org.jspecify.annotations.NullMarked;
