which-side-stays =
    La pestaña y lo que cuelga de ella se quedan; la tira del borde del lado del bastidor se quita. Raye la tira antes
    de cortar y compruebe los dos números en cada esquina: la altura que se corta, desde el borde del lado del
    bastidor; la que queda, desde la pestaña.
cut-less-first =
    Un embellecedor cortado de más no tiene arreglo. Corte por el lado del sobrante, pruébelo y rebaje el resto; en
    caso de duda, corte menos.
saw-blade =
    El plástico delgado pide una hoja fina (18 dientes por pulgada o más) a baja velocidad, para que no se funda ni se
    astille; sujételo a una tabla a lo largo de la línea, con cinta encima. Metal delgado: tijeras de chapa u hoja fina
    para metal, y después quite la rebaba; el canto corta, así que use guantes al manejarlo.
eye-protection =
    Use gafas de protección, sobre todo por encima de la cabeza: las virutas caen en la cara. Corte el embellecedor en
    un banco, no en el hueco.
what-lies-behind =
    Antes de meter una sierra o un tornillo en el forro alrededor del hueco, mire qué hay detrás: cables, los hilos de
    la propia claraboya, arcos del techo. Apague y desconecte la batería. Los arcos soportan carga: no corte ninguno
    sin un reemplazo que el fabricante de la carrocería permita.
