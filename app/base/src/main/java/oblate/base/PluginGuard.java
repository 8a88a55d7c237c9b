/* SPDX-License-Identifier: Apache-2.0 */
package oblate.base;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.util.Arrays;

/**
 * Stands between the program and a stranger's plug-in: whatever a call throws that its signature does not announce switches its jar off and
 * comes out as one sentence. Id and label are those it came in with.
 */
final class PluginGuard implements InvocationHandler {
    private final Object plugin;
    private final PluginEntry entry;
    private final PluginHost host;

    private PluginGuard(Object plugin, PluginEntry entry, PluginHost host) {
        this.plugin = plugin;
        this.entry = entry;
        this.host = host;
    }

    static <T> T guarded(Class<T> point, T plugin, PluginEntry entry, PluginHost host) {
        Object proxy = Proxy.newProxyInstance(
                point.getClassLoader(), new Class<?>[] {point}, new PluginGuard(plugin, entry, host));
        return point.cast(proxy);
    }

    @Override
    public Object invoke(Object proxy, Method method, Object[] arguments) throws Throwable {
        if (method.getDeclaringClass() == Object.class) {
            return ofObject(proxy, method, arguments);
        }
        if (arguments == null && method.getName().equals("id")) {
            return entry.id();
        }
        if (arguments == null && method.getName().equals("label")) {
            return entry.label();
        }
        if (!host.switches().isOn(entry.jar())) {
            throw new ProblemException(PluginProblem.SWITCHED_OFF, entry.label(), entry.jar());
        }
        try {
            return method.invoke(plugin, arguments);
        } catch (InvocationTargetException e) {
            Throwable thrown = e.getCause();
            if (thrown instanceof ProblemException || isAnnounced(method, thrown)) {
                throw thrown;
            }
            PluginFault fault = host.fault(entry, "its " + method.getName() + "() was called", thrown);
            host.switches().switchOff(fault);
            throw new ProblemException(thrown, PluginProblem.FAILED, fault.sentence());
        }
    }

    /** Two plug-ins are the same when they are one object; a stranger's own equals is not asked. */
    private Object ofObject(Object proxy, Method method, Object[] arguments) {
        return switch (method.getName()) {
            case "equals" -> proxy == arguments[0];
            case "hashCode" -> System.identityHashCode(plugin);
            default -> entry.id() + " in " + entry.jar();
        };
    }

    private static boolean isAnnounced(Method method, Throwable thrown) {
        return thrown instanceof Exception
                && !(thrown instanceof RuntimeException)
                && Arrays.stream(method.getExceptionTypes()).anyMatch(t -> t.isInstance(thrown));
    }
}
