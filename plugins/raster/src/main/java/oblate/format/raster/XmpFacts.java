/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Map;
import javax.xml.namespace.QName;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** Facts from an XMP packet (ISO 16684-1): the properties of the usual namespaces, under their usual prefixes. No DTD, no entities. */
final class XmpFacts {
    private static final String GROUP = "XMP";
    private static final String RDF = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
    private static final Map<String, String> PREFIXES = Map.of(
            "http://ns.adobe.com/exif/1.0/", "exif",
            "http://cipa.jp/exif/1.0/", "exifEX",
            "http://ns.adobe.com/tiff/1.0/", "tiff",
            "http://ns.adobe.com/xap/1.0/", "xmp",
            "http://ns.adobe.com/photoshop/1.0/", "photoshop",
            "http://purl.org/dc/elements/1.1/", "dc");
    private static final int MOST_ELEMENTS = 20_000;
    private static final int DEEPEST = 100;

    private XmpFacts() {}

    /** Adds what the packet says; a packet that is no good XML is told as a fact and costs no picture. */
    @SuppressWarnings("checkstyle:IllegalCatch") // border to the XML parser reading hostile bytes
    static void add(byte[] packet, FactList facts) {
        try {
            read(packet, facts);
        } catch (XMLStreamException | RuntimeException e) {
            facts.add(GROUP, "Unreadable", "its XMP packet cannot be read in full");
        }
    }

    private static void read(byte[] packet, FactList facts) throws XMLStreamException {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_COALESCING, true);
        factory.setXMLReporter((message, kind, related, place) -> {
            // said once, as a fact
        });
        // Decoded here: given bytes that are no UTF-8, the parser would complain on the console.
        String words =
                new String(packet, StandardCharsets.UTF_8).replace("\u0000", "").strip();
        XMLStreamReader xml = factory.createXMLStreamReader(new StringReader(words));
        Deque<QName> open = new ArrayDeque<>();
        String property = null;
        int propertyDepth = 0;
        StringBuilder text = new StringBuilder();
        int elements = 0;
        while (xml.hasNext()) {
            int event = xml.next();
            if (event == XMLStreamConstants.START_ELEMENT) {
                if (++elements > MOST_ELEMENTS || open.size() > DEEPEST) {
                    throw new XMLStreamException("too large");
                }
                QName name = xml.getName();
                if (isDescription(name) && property == null) {
                    attributes(xml, facts);
                } else if (property == null && !open.isEmpty() && isDescription(open.peek()) && key(name) != null) {
                    property = key(name);
                    propertyDepth = open.size();
                    text.setLength(0);
                }
                open.push(name);
            } else if (event == XMLStreamConstants.CHARACTERS && property != null && !xml.isWhiteSpace()) {
                text.append(text.isEmpty() ? "" : "; ").append(xml.getText().strip());
            } else if (event == XMLStreamConstants.END_ELEMENT) {
                open.pop();
                if (property != null && open.size() == propertyDepth) {
                    facts.add(GROUP, property, text.toString());
                    property = null;
                }
            }
        }
    }

    private static boolean isDescription(QName name) {
        return name.getNamespaceURI().equals(RDF) && name.getLocalPart().equals("Description");
    }

    private static void attributes(XMLStreamReader xml, FactList facts) {
        for (int i = 0; i < xml.getAttributeCount(); i++) {
            String key = key(xml.getAttributeName(i));
            if (key != null) {
                facts.add(GROUP, key, xml.getAttributeValue(i));
            }
        }
    }

    private static String key(QName name) {
        String prefix = PREFIXES.get(name.getNamespaceURI());
        return prefix == null ? null : prefix + ":" + name.getLocalPart();
    }
}
