/* SPDX-License-Identifier: Apache-2.0 */
package oblate.base;

import java.util.Collection;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Finds which jar's code a stack trace went through: each jar has a class loader named after it, and frames tell the loader's name. Stateless. */
final class PluginBlame {
    private static final String PREFIX = "plugin ";

    private PluginBlame() {}

    /** Name for the class loader of a jar. */
    static String loaderName(String jar) {
        return PREFIX + jar;
    }

    /** The jar whose code stood nearest to where something was thrown; causes and what was suppressed are looked at too. */
    static Optional<String> jarOf(Throwable thrown, Collection<String> jars) {
        return jarOf(thrown, jars, Collections.newSetFromMap(new IdentityHashMap<>()));
    }

    private static Optional<String> jarOf(Throwable thrown, Collection<String> jars, Set<Throwable> seen) {
        if (thrown == null || !seen.add(thrown)) {
            return Optional.empty();
        }
        Optional<String> jar = jarOf(List.of(thrown.getStackTrace()), jars)
                .or(() -> loaderOf(thrown.getClass().getClassLoader(), jars))
                .or(() -> jarOf(thrown.getCause(), jars, seen));
        for (Throwable suppressed : thrown.getSuppressed()) {
            jar = jar.or(() -> jarOf(suppressed, jars, seen));
        }
        return jar;
    }

    /** The jar of the first frame that is a jar's. */
    static Optional<String> jarOf(List<StackTraceElement> frames, Collection<String> jars) {
        return frames.stream()
                .map(StackTraceElement::getClassLoaderName)
                .filter(name -> name != null && name.startsWith(PREFIX))
                .map(name -> name.substring(PREFIX.length()))
                .filter(jars::contains)
                .findFirst();
    }

    /** The jar a class loader is of. */
    static Optional<String> loaderOf(ClassLoader loader, Collection<String> jars) {
        return Optional.ofNullable(loader)
                .map(ClassLoader::getName)
                .filter(name -> name.startsWith(PREFIX))
                .map(name -> name.substring(PREFIX.length()))
                .filter(jars::contains);
    }
}
