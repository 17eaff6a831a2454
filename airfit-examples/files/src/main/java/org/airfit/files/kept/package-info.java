/**
 * Answers kept, so that years later it can be shown what was answered, to what, and what is different today.
 *
 * <p>{@link org.airfit.files.kept.KeptAnswer} answers a job and keeps question, reference set, catalogue and answer;
 * begin there. {@link org.airfit.files.kept.AnswerComparison} tells what is different between two of them, in words.
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
