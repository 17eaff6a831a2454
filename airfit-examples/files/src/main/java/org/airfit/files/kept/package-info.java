/**
 * Answers kept, so that years later it can be shown what was answered, to what, and what is different today.
 *
 * <p>{@link org.airfit.files.kept.KeptAnswer} answers a job and keeps question, reference set, catalogue and answer;
 * begin there. {@link org.airfit.files.kept.AnswerComparison} tells what is different between two of them, in words.
 *
 * <p>An answer that is kept, read again, and compared with what would be answered today:
 *
 * <pre>{@code
 * import java.time.LocalDate;
 * import org.airfit.files.CatalogueFile;
 * import org.airfit.files.Document;
 * import org.airfit.files.Job;
 * import org.airfit.files.JobFile;
 * import org.airfit.files.Json;
 * import org.airfit.files.ShopCatalogue;
 * import org.airfit.files.WrongFileException;
 * import org.airfit.files.kept.AnswerComparison;
 * import org.airfit.files.kept.KeptAnswer;
 *
 * class KeptForAClaim {
 *   public static void main(String[] args) throws WrongFileException {
 *     String shop = """
 *         {"catalogue": "Shop (invented)",
 *          "profiles": [{"id": "tern", "name": "Tern", "from": "invented", "source": "made up",
 *            "dimensions": {"tip diameter": {"nominal": "11.90 mm", "deviation": "0.03 mm"}}}],
 *          "parts": [{"kind": "hose", "id": "H-1", "name": "Hose 10 m", "rated": "12 bar(g)",
 *            "hose": "3/8 in", "bore": "9.5 mm", "length": "10 m", "wall": "smooth rubber hose",
 *            "end": "3/8 NPT female", "otherEnd": "3/8 NPT female"}]}""";
 *     String job = """
 *         {"job": "Hose for a drill", "customer": "Example", "supply": {"pressure": "7 bar(g)"},
 *          "line": [{"kind": "outlet", "end": "3/8 NPT male"}, {"kind": "hose", "reach": "10 m"}],
 *          "tool": {"name": "drill", "air": "6 L/s ANR", "pressure": "6.2 bar(g)",
 *            "inlet": "3/8 NPT male"}}""";
 *     ShopCatalogue catalogue = CatalogueFile.read(Document.of("shop", Json.read("shop", shop)));
 *     Job asked = JobFile.read(Document.of("job", Json.read("job", job)), catalogue);
 *     KeptAnswer kept = KeptAnswer.of(asked, LocalDate.of(2026, 11, 29));
 *     KeptAnswer then = KeptAnswer.read("claim.json", kept.toText());
 *     System.out.println(AnswerComparison.of(then, then.again(LocalDate.now())).isSameAnswer()); // true
 *   }
 * }
 * }</pre>
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>Texts that are hashed are JSON in canonical form (RFC 8785) in UTF-8; the hash is SHA-256, in 64 small
 *       hexadecimal digits. Other programs can compute it again.
 *   <li>A hash tells that a text was changed. It does not tell who wrote it: whoever changes a text can write its hash
 *       anew. Where that matters, keep the hash elsewhere too.
 *   <li>An answer that was read is refused where one of its hashes is not that of its text.
 *   <li>A {@code null} argument throws {@link NullPointerException}; all types are immutable and may be shared by
 *       threads.
 * </ul>
 *
 * <p>May use: the library, the files and their module for Jackson. Nothing that a web page uses may use this package.
 */
@NullMarked
package org.airfit.files.kept;

import org.jspecify.annotations.NullMarked;
