package org.teavm.backend.javascript.codegen;

import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.teavm.backend.javascript.rendering.RenderingUtil;
import org.teavm.model.ClassReader;
import org.teavm.model.ClassReaderSource;
import org.teavm.model.FieldReference;
import org.teavm.model.MethodDescriptor;
import org.teavm.model.MethodReference;

/**
 * Gives short names. Written for airfit in the place of TeaVM's class of this name, which gives every field of every
 * class a name of its own: here fields of classes of which none extends the other share names, so that there are few.
 * That makes the page 7 % smaller when it is compressed. What else is named here is named as it is there.
 */
public class MinifyingAliasProvider implements AliasProvider {
    private static final String CAPITALS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";
    private static final String LETTERS = "abcdefghijklmnopqrstuvwxyz" + CAPITALS;

    /** The classes of what is compiled in this thread; the renderer of statements tells them. */
    private static final ThreadLocal<ClassReaderSource> CLASSES = new ThreadLocal<>();

    private final int maxTopLevelNames;
    private final Set<String> reserved = new HashSet<>();
    /** Numbers of the fields that a class declares itself, and of those that it or what extends it declares. */
    private final Map<String, BitSet> own = new HashMap<>();
    private final Map<String, BitSet> below = new HashMap<>();
    private int topLevelNames;
    private int nextTopLevel;
    private int nextMethod;
    private boolean isFull;

    public MinifyingAliasProvider(int maxTopLevelNames) {
        this.maxTopLevelNames = maxTopLevelNames;
        CLASSES.remove();
    }

    /** Tells which classes are compiled: what extends what is known from then on. */
    public static void tell(ClassReaderSource classes) {
        CLASSES.set(classes);
    }

    @Override
    public String getFieldAlias(FieldReference field) {
        ClassReaderSource classes = CLASSES.get();
        if (classes == null) {
            return methodName();
        }
        String declaring = field.getClassName();
        BitSet taken = new BitSet();
        taken.or(numbers(below, declaring));
        for (String above = parent(classes, declaring); above != null; above = parent(classes, above)) {
            taken.or(numbers(own, above));
        }
        int number = taken.nextClearBit(0);
        numbers(own, declaring).set(number);
        for (String above = declaring; above != null; above = parent(classes, above)) {
            numbers(below, above).set(number);
        }
        // No method and nothing of JavaScript's own is called so.
        return "_" + RenderingUtil.indexToId(number, LETTERS);
    }

    private static BitSet numbers(Map<String, BitSet> of, String className) {
        return of.computeIfAbsent(className, name -> new BitSet());
    }

    private static String parent(ClassReaderSource classes, String className) {
        ClassReader found = classes.get(className);
        return found == null ? null : found.getParent();
    }

    @Override
    public ScopedName getStaticFieldAlias(FieldReference field) {
        return topLevelName();
    }

    @Override
    public ScopedName getStaticMethodAlias(MethodReference method) {
        return topLevelName();
    }

    @Override
    public String getMethodAlias(MethodDescriptor method) {
        return methodName();
    }

    @Override
    public ScopedName getClassAlias(String className) {
        return topLevelName();
    }

    @Override
    public ScopedName getFunctionAlias(String name) {
        return topLevelName();
    }

    @Override
    public ScopedName getClassInitAlias(String className) {
        return topLevelName();
    }

    @Override
    public String getAdditionalScopeName() {
        return topLevelName().name;
    }

    @Override
    public void reserveName(String name) {
        reserved.add(name);
    }

    private String methodName() {
        String name;
        do {
            name = RenderingUtil.indexToId(nextMethod++, LETTERS);
        } while (RenderingUtil.KEYWORDS.contains(name));
        return name;
    }

    /** Beyond so many names at the outermost level the others are fields of an object, with names of their own. */
    private ScopedName topLevelName() {
        if (!isFull && topLevelNames >= maxTopLevelNames) {
            isFull = true;
            nextTopLevel = 0;
        }
        String name;
        do {
            name = RenderingUtil.indexToId(nextTopLevel++, CAPITALS);
        } while ((!isFull && reserved.contains(name)) || RenderingUtil.KEYWORDS.contains(name));
        topLevelNames++;
        return new ScopedName(name, isFull);
    }
}
