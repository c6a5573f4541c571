### The labels and descriptions of the closed lists of `practice::lead_ins`: a message for each member, `List-code`.

## LeadInPair

LeadInPair-twisted = Trenzado
    .description = Tres vueltas por pie (diez por metro) o más en todo el recorrido: los pares de una misma unidad pueden ir en una sola ranura.
LeadInPair-jacketed = Con cubierta
    .description = Un par trenzado con cubierta, como lo traen los lazos preformados: los pares de una misma unidad pueden ir en una sola ranura.
LeadInPair-screened = Apantallado
    .description = Un par trenzado con pantalla puesta a tierra en la unidad: los pares de unidades distintas pueden ir en una sola ranura.
LeadInPair-loose = Suelto
    .description = Dos alambres lado a lado, o trenzados menos de tres veces por pie: cada par va en su propia ranura, porque tales pares se acoplan.
