/**
 * Files of the trade's daily work: jobs, catalogues, reference sets and networks, read into airfit's values and
 * written again.
 *
 * <p>{@link org.airfit.files.Json} and {@link org.airfit.files.Csv} turn text into plain values (maps, lists, texts,
 * numbers), each with its library. What the values mean is checked on the plain values: {@link
 * org.airfit.files.JobFile}, {@link org.airfit.files.CatalogueFile}, {@link org.airfit.files.NetworkFile}, {@link
 * org.airfit.files.DayFile} and {@link org.airfit.files.ReferenceSetFile} know no library and no folder, so that a web page may use the very same. {@link
 * org.airfit.files.Disk} finds the files in folders; begin there. Single values and answers as JSON: package {@code
 * org.airfit.files.json}.
 *
 * <p>A catalogue as a program got it, and what it holds:
 *
 * <pre>{@code
 * import org.airfit.files.CatalogueFile;
 * import org.airfit.files.Document;
 * import org.airfit.files.Json;
 * import org.airfit.files.ShopCatalogue;
 * import org.airfit.files.WrongFileException;
 *
 * class CatalogueOfAShop {
 *   public static void main(String[] args) throws WrongFileException {
 *     String shop = """
 *         {"catalogue": "Shop (invented)",
 *          "profiles": [{"id": "tern", "name": "Tern", "from": "invented", "source": "made up",
 *            "dimensions": {"tip diameter": {"nominal": "11.90 mm", "deviation": "0.03 mm"}}}],
 *          "parts": [{"kind": "hose", "id": "H-1", "name": "Hose 10 m", "rated": "12 bar(g)",
 *            "hose": "3/8 in", "bore": "9.5 mm", "length": "10 m", "wall": "smooth rubber hose",
 *            "end": "3/8 NPT female", "otherEnd": "3/8 NPT female"}]}""";
 *     Document document = Document.of("shop.json", Json.read("shop.json", shop));
 *     ShopCatalogue read = CatalogueFile.read(document);
 *     System.out.println(read.name() + ": " + read.parts().parts().get(0).facts().name());
 *     // Shop (invented): Hose 10 m
 *   }
 * }
 * }</pre>
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>Whatever is wrong with a file is a {@link org.airfit.files.WrongFileException}: one line with file, field,
 *       value and what is accepted.
 *   <li>A field whose name is not known is wrong; names that begin with {@code //} are remarks.
 *   <li>A {@code null} argument throws {@link NullPointerException}; null inside a document is a field that is missing.
 *   <li>All values are immutable and may be shared by threads.
 * </ul>
 *
 * <p>May use: the library, and in {@code Json}, {@code Csv} and {@code Disk} alone what reads text and folders. The
 * formats: docs/job-file.md, docs/network-file.md,
 * docs/day-file.md and docs/reference-set-file.md.
 */
@NullMarked
package org.airfit.files;

import org.jspecify.annotations.NullMarked;
