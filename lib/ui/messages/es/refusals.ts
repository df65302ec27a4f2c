import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const refusals: Translation['refusals'] = {
  malformed: { title: 'No se entiende', text: 'Falta algo en el registro o algo no se admite: {errors}' },
  event_id_reused: {
    title: 'Ya se usó',
    text: 'Este registro ya se envió con otro contenido. Escanee otra vez para hacer uno nuevo.',
  },
  time_in_future: {
    title: 'Reloj adelantado',
    text: 'La hora de este registro está en el futuro. Ajuste el reloj de este equipo.',
  },
  device_seq_reused: {
    title: 'Número ya usado',
    text: 'Otro registro tiene el número {deviceSeq} del equipo {device}: esta tableta se restauró de una copia. Toma sola un nombre nuevo y envía el registro otra vez.',
  },
  not_vouched: {
    title: 'Gafete sin confirmar',
    text: 'Nada muestra que {operator} tuviera sesión en el equipo que registró esto. Pregunte a {operator} y después acéptelo o anúlelo.',
  },
  splices_itself: {
    title: 'El mismo carrete',
    text: '{item} no se puede empalmar consigo mismo. Escanee el carrete nuevo.',
  },
  reprint_without_reason: {
    title: 'Ya se imprimió',
    text: 'Ya se imprimió una etiqueta con {id}. Diga por qué hace falta otra y retire la anterior.',
  },
  not_permitted: {
    title: 'No es su función',
    text: 'Su función no puede registrar esto. Pida a quien pueda, o a un administrador.',
  },
  unknown_station: {
    title: 'Estación desconocida',
    text: 'No hay estación {station} en la planta. Revise el código o pregunte a un administrador.',
  },
  unknown_operator: {
    title: 'Gafete desconocido',
    text: 'La planta no conoce el gafete {operator}. Escanéelo otra vez o pregunte a un administrador.',
  },
  unknown_product: {
    title: 'Producto desconocido',
    text: 'La planta no tiene el producto {product} en revisión {revision}.',
  },
  unknown_unit: {
    title: 'Unidad desconocida',
    text: 'La unidad {unit} nunca se inició. Escanéela otra vez o iníciela primero.',
  },
  unknown_item: {
    title: 'Artículo desconocido',
    text: 'El artículo {item} nunca se recibió. Escanéelo otra vez o regístrelo en recepción.',
  },
  unknown_container: {
    title: 'Contenedor desconocido',
    text: 'Nunca se empacó nada en {container}. Escanéelo otra vez.',
  },
  unknown_slot: { title: 'Ranura desconocida', text: 'La estación {station} no tiene la ranura {slot}.' },
  unknown_hold: { title: 'Retención desconocida', text: 'Ningún evento {hold} puso una retención.' },
  serial_pattern_mismatch: {
    title: 'No es un número de serie de este producto',
    text: '{unit} no parece un número de serie de este producto ({expected}). Revise la etiqueta y el producto.',
  },
  already_started: {
    title: 'Ya iniciada',
    text: 'La unidad {unit} ya se había iniciado. Escanee la siguiente.',
  },
  already_received: { title: 'Ya recibido', text: 'El artículo {item} ya se había registrado.' },
  scrapped: { title: 'Desechada', text: 'La unidad {unit} es desecho. Sáquela de la línea.' },
  already_shipped: {
    title: 'Ya enviada',
    text: '{subject} salió con el envío {shipment}. Primero debe devolverse.',
  },
  already_packed: {
    title: 'Ya empacada',
    text: 'La unidad {unit} está en el contenedor {container}. Desempáquela primero.',
  },
  inside_another_unit: {
    title: 'Dentro de otra unidad',
    text: 'La unidad {unit} está dentro de {outer}. Empaque {outer}.',
  },
  on_hold: {
    title: 'Retención',
    text: '{kind, select, unit {Unidad} item {Artículo} lot {Lote} container {Contenedor} other {Algo}} {id}: retención por {reason}',
  },
  open_failure: {
    title: 'Falló y no ha vuelto a pasar',
    text: 'La unidad {unit} falló en {operation}. Repárela y llévela otra vez a {operation}.',
  },
  not_on_route: {
    title: 'No está en su ruta',
    text: 'La ruta de la unidad {unit} no tiene {operation}.{has_expected, select, no {} other { Sigue en {expected}.}}',
  },
  wrong_step: {
    title: 'Paso equivocado',
    text: 'La unidad {unit} debe pasar {expected} (paso {step}) antes de {operation}.',
  },
  not_qualified: {
    title: 'Sin calificación',
    text: 'El gafete {operator} no está calificado para {operation}. Debe hacerlo alguien que lo esté.',
  },
  slot_empty: {
    title: 'Ranura vacía',
    text: 'La ranura {slot} de {station} no tiene nada.{has_expected, select, no {} other { Necesita {expected}.}}',
  },
  wrong_kind: {
    title: 'Tipo de artículo equivocado',
    text: '{item}: {kind}. La ranura {slot} de {station} lleva: {expected}.',
  },
  wrong_part: {
    title: 'Número de parte equivocado',
    text: '{has_position, select, yes {{item}, montado en {position} de {unit}, es {has_part, select, no {parte desconocida} other {{part}}}; la lista de materiales dice {expected}. Calidad decide.} other {La ranura {slot} de {station} necesita {expected}; {item} tiene {has_part, select, no {parte desconocida} other {{part}}}. Sáquelo y detenga la línea.}}',
  },
  retired: { title: 'Retirado', text: 'El artículo {item} ya no debe usarse.' },
  not_in_slot: { title: 'No está en esa ranura', text: '{item} no está en la ranura {slot} de {station}.' },
  not_in_container: {
    title: 'No está en ese contenedor',
    text: '{has_unit, select, no {{container} no está en {from}} other {La unidad {unit} no está en {container}}}.',
  },
  not_inside: { title: 'No está dentro de esa unidad', text: 'La unidad {unit} no está dentro de {from}.' },
  already_inside: {
    title: 'Ya está dentro de una unidad',
    text: 'La unidad {unit} está dentro de {outer}. Sepárela primero.',
  },
  would_contain_itself: {
    title: 'Entraría en sí misma',
    text: '{subject} no puede entrar en {into}: lo rodea.',
  },
  unfinished: {
    title: 'Sin terminar',
    text: 'La unidad {unit} no está terminada.{has_expected, select, no { No tiene ruta que terminar.} other { Sigue en {expected} (paso {step}).}}',
  },
  unsigned: {
    title: 'Sin firma',
    text: 'La unidad {unit} no tiene la firma de calidad. Una anterior a una devolución ya no vale.',
  },
  unknown_exception: {
    title: 'Sin excepción',
    text: 'El evento {event} no tiene nada en contra, o nunca se registró.',
  },
  exception_already_cleared: { title: 'Ya resuelta', text: 'Esta excepción ya se había resuelto.' },
  hold_already_released: { title: 'Ya liberada', text: 'Esta retención ya se había liberado.' },
  void_of_void: { title: 'Una anulación queda', text: 'Un evento que anula otro no se puede anular.' },
};
