using Toepan.Domain.Programme;

namespace Toepan.Web.Pages.Programme;

/// <summary>Triggers and choices of a repeat in words.</summary>
public static class RepeatWords
{
    public static string Of(RepeatTrigger trigger) => trigger switch
    {
        RepeatTrigger.ConductOutside => "conduct outside its bounds, or not recorded",
        RepeatTrigger.DataLost => "data lost that a rating needs",
        RepeatTrigger.EquipmentFault => "equipment found faulty",
        RepeatTrigger.SpecimenFault => "specimen not as sold",
        RepeatTrigger.Confirmation => "confirmation: how well does it repeat? Both runs count",
        _ => "the result is doubted",
    };

    public static string Of(RepeatChoice choice) => choice == RepeatChoice.Repeat ? "repeat the run" : "leave it as it stands";
}
