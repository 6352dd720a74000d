using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Toepan.Api.Store.Migrations
{
    /// <inheritdoc />
    public partial class ProgrammeRecords : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<DateOnly>(
                name: "built_from",
                schema: "lab",
                table: "vehicle",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<DateOnly>(
                name: "built_to",
                schema: "lab",
                table: "vehicle",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<DateOnly>(
                name: "planned_date",
                schema: "lab",
                table: "vehicle",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "restraint_equipment",
                schema: "lab",
                table: "vehicle",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "sales_share_percent",
                schema: "lab",
                table: "vehicle",
                type: "numeric",
                nullable: true);

            migrationBuilder.AddColumn<uint>(
                name: "xmin",
                schema: "lab",
                table: "vehicle",
                type: "xid",
                rowVersion: true,
                nullable: false,
                defaultValue: 0u);

            migrationBuilder.CreateTable(
                name: "carry_over",
                schema: "lab",
                columns: table => new
                {
                    vehicle_key = table.Column<string>(type: "text", nullable: false),
                    from_key = table.Column<string>(type: "text", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    evidence = table.Column<string>(type: "text", nullable: false),
                    decided_by = table.Column<string>(type: "text", nullable: false),
                    decided_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_carry_over", x => x.vehicle_key);
                    table.ForeignKey(
                        name: "fk_carry_over_vehicle_from_key",
                        column: x => x.from_key,
                        principalSchema: "lab",
                        principalTable: "vehicle",
                        principalColumn: "key",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_carry_over_vehicle_vehicle_key",
                        column: x => x.vehicle_key,
                        principalSchema: "lab",
                        principalTable: "vehicle",
                        principalColumn: "key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "measure_view",
                schema: "lab",
                columns: table => new
                {
                    test = table.Column<string>(type: "text", nullable: false),
                    who = table.Column<string>(type: "text", nullable: false),
                    first_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_measure_view", x => new { x.test, x.who });
                });

            migrationBuilder.CreateTable(
                name: "planned_run",
                schema: "lab",
                columns: table => new
                {
                    test = table.Column<string>(type: "text", nullable: false),
                    vehicle_key = table.Column<string>(type: "text", nullable: false),
                    procedure = table.Column<string>(type: "text", nullable: false),
                    procedure_edition = table.Column<int>(type: "integer", nullable: false),
                    planned_date = table.Column<DateOnly>(type: "date", nullable: false),
                    repeat_of = table.Column<string>(type: "text", nullable: true),
                    planned_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    planned_by = table.Column<string>(type: "text", nullable: false),
                    prepared_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    prepared_by = table.Column<string>(type: "text", nullable: true),
                    ran_on = table.Column<DateOnly>(type: "date", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_planned_run", x => x.test);
                    table.ForeignKey(
                        name: "fk_planned_run_vehicle_vehicle_key",
                        column: x => x.vehicle_key,
                        principalSchema: "lab",
                        principalTable: "vehicle",
                        principalColumn: "key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "preparation",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    test = table.Column<string>(type: "text", nullable: false),
                    item = table.Column<string>(type: "text", nullable: false),
                    text = table.Column<string>(type: "text", nullable: false),
                    recorded_by = table.Column<string>(type: "text", nullable: false),
                    recorded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_preparation", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "repeat_decision",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    test = table.Column<string>(type: "text", nullable: false),
                    trigger = table.Column<string>(type: "text", nullable: false),
                    choice = table.Column<string>(type: "text", nullable: false),
                    evidence = table.Column<string>(type: "text", nullable: false),
                    options = table.Column<string>(type: "text", nullable: false),
                    valid = table.Column<bool>(type: "boolean", nullable: false),
                    said_seen = table.Column<bool>(type: "boolean", nullable: false),
                    seen_by = table.Column<string>(type: "jsonb", nullable: false),
                    decided_by = table.Column<string>(type: "text", nullable: false),
                    decided_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_repeat_decision", x => x.id);
                    table.ForeignKey(
                        name: "fk_repeat_decision_test_run_test",
                        column: x => x.test,
                        principalSchema: "lab",
                        principalTable: "test_run",
                        principalColumn: "test",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "specimen",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    vehicle_key = table.Column<string>(type: "text", nullable: false),
                    test = table.Column<string>(type: "text", nullable: true),
                    masked_serial = table.Column<string>(type: "text", nullable: true),
                    built_on = table.Column<DateOnly>(type: "date", nullable: true),
                    mass_kg = table.Column<decimal>(type: "numeric", nullable: true),
                    odometer_km = table.Column<decimal>(type: "numeric", nullable: true),
                    options = table.Column<string>(type: "text", nullable: true),
                    purchased_on = table.Column<DateOnly>(type: "date", nullable: true),
                    purchased_from = table.Column<string>(type: "text", nullable: true),
                    purchase_reference = table.Column<string>(type: "text", nullable: true),
                    received_on = table.Column<DateOnly>(type: "date", nullable: true),
                    created_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_specimen", x => x.id);
                    table.ForeignKey(
                        name: "fk_specimen_vehicle_vehicle_key",
                        column: x => x.vehicle_key,
                        principalSchema: "lab",
                        principalTable: "vehicle",
                        principalColumn: "key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_carry_over_from_key",
                schema: "lab",
                table: "carry_over",
                column: "from_key");

            migrationBuilder.CreateIndex(
                name: "ix_planned_run_repeat_of",
                schema: "lab",
                table: "planned_run",
                column: "repeat_of");

            migrationBuilder.CreateIndex(
                name: "ix_planned_run_vehicle_key",
                schema: "lab",
                table: "planned_run",
                column: "vehicle_key");

            migrationBuilder.CreateIndex(
                name: "ix_preparation_test_item",
                schema: "lab",
                table: "preparation",
                columns: new[] { "test", "item" });

            migrationBuilder.CreateIndex(
                name: "ix_repeat_decision_test",
                schema: "lab",
                table: "repeat_decision",
                column: "test");

            migrationBuilder.CreateIndex(
                name: "ix_specimen_test",
                schema: "lab",
                table: "specimen",
                column: "test",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_specimen_vehicle_key",
                schema: "lab",
                table: "specimen",
                column: "vehicle_key");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "carry_over",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "measure_view",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "planned_run",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "preparation",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "repeat_decision",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "specimen",
                schema: "lab");

            migrationBuilder.DropColumn(
                name: "built_from",
                schema: "lab",
                table: "vehicle");

            migrationBuilder.DropColumn(
                name: "built_to",
                schema: "lab",
                table: "vehicle");

            migrationBuilder.DropColumn(
                name: "planned_date",
                schema: "lab",
                table: "vehicle");

            migrationBuilder.DropColumn(
                name: "restraint_equipment",
                schema: "lab",
                table: "vehicle");

            migrationBuilder.DropColumn(
                name: "sales_share_percent",
                schema: "lab",
                table: "vehicle");

            migrationBuilder.DropColumn(
                name: "xmin",
                schema: "lab",
                table: "vehicle");
        }
    }
}
